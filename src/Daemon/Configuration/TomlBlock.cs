using System.Globalization;
using ScaleLink.Weighing.Documents;
using Tomlyn.Syntax;

namespace ScaleLink.Daemon.Configuration;

/// <summary>One table of the bay file.</summary>
internal sealed class TomlBlock : DocumentBlock<KeyValueSyntax>
{
    // A path can be long; no name is.
    private const int LongestText = 1024;

    private readonly List<Diagnostic> _mistakes;

    public TomlBlock(string name, int line, IEnumerable<KeyValueSyntax> entries, List<Diagnostic> mistakes) : base(name)
    {
        (Line, _mistakes) = (line, mistakes);
        foreach (var entry in entries)
            Add(entry.Key!.ToString().Trim(), entry);
    }

    public string Name => Place;

    public int Line { get; }

    protected override Code UnknownCode => ConfigurationCodes.KeyUnknown;

    protected override Code WrongKindCode => ConfigurationCodes.ValueUnusable;

    public int LineOf(string key) => Peek(key) is { } entry ? entry.Span.Start.Line + 1 : Line;

    /// <summary>A text that people or other programs get to see.</summary>
    public string? Text(string key)
    {
        var text = AnyText(key);
        if (text is null || PlainText.IsClean(text, LongestText))
            return text;
        Note(ConfigurationCodes.TextUnprintable, LineOf(key), $"{At(key)} is longer than {LongestText} signs or has some that do not show, such as escape or a mark that turns the direction of writing.", "Type it anew.");
        return null;
    }

    /// <summary>A text in which any sign means itself.</summary>
    public string? AnyText(string key) => ReadValue(key, "a text in quotes", value => (value as StringValueSyntax)?.Value);

    public string RequiredText(string key)
    {
        var text = Text(key);
        if (!string.IsNullOrWhiteSpace(text))
            return text;
        if (text is not null || !Has(key))
            Note(ConfigurationCodes.KeyMissing, LineOf(key), $"{At(key)} is missing.", $"Add {key} = \"...\".");
        return "";
    }

    public double? Number(string key, double least, double most) => ReadValue<double?>(key, $"a number from {Show(least)} to {Show(most)}", value => value switch
    {
        FloatValueSyntax f when f.Value >= least && f.Value <= most => f.Value,
        IntegerValueSyntax i when i.Value >= least && i.Value <= most => i.Value,
        _ => null,
    });

    public int? Whole(string key, int least, int most) => ReadValue<int?>(key, $"a whole number from {least} to {most}", value =>
        value is IntegerValueSyntax i && i.Value >= least && i.Value <= most ? (int)i.Value : null);

    public bool? Flag(string key) => ReadValue<bool?>(key, "true or false", value => (value as BooleanValueSyntax)?.Value);

    public T? Choice<T>(string key, IReadOnlyDictionary<string, T> choices) where T : struct => ReadValue<T?>(key, "one of " + string.Join(", ", choices.Keys), value =>
        value is StringValueSyntax { Value: { } text } && choices.TryGetValue(text, out var choice) ? choice : null);

    public void Note(Code code, int line, Sentence message, Sentence remedy) => _mistakes.Add(FileMistake.At(line, code, message, remedy));

    public override void Note(Code code, string key, Sentence message, Sentence remedy) => Note(code, LineOf(key), message, remedy);

    protected override string Shown(KeyValueSyntax field) => $"{field.Value}".Trim();

    private T? ReadValue<T>(string key, string wanted, Func<ValueSyntax?, T?> convert) => Read(key, wanted, entry => convert(entry.Value));

    private static string Show(double number) => number.ToString(CultureInfo.InvariantCulture);
}
