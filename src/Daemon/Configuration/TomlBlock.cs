using System.Globalization;
using Tomlyn.Syntax;

namespace ScaleLink.Daemon.Configuration;

/// <summary>One table of the bay file, read key by key. Every mistake is noted with its line and reading goes on, so that all are told at once.</summary>
internal sealed class TomlBlock
{
    private readonly Dictionary<string, KeyValueSyntax> _entries;
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);
    private readonly List<Diagnostic> _mistakes;

    public TomlBlock(string name, int line, IEnumerable<KeyValueSyntax> entries, List<Diagnostic> mistakes)
    {
        (Name, Line, _mistakes) = (name, line, mistakes);
        _entries = entries.ToDictionary(e => e.Key!.ToString().Trim(), StringComparer.Ordinal);
    }

    public string Name { get; }

    public int Line { get; }

    public bool Has(string key) => _entries.ContainsKey(key);

    public int LineOf(string key) => _entries.TryGetValue(key, out var entry) ? LineOf(entry) : Line;

    public string? Text(string key) => Read(key, "a text in quotes", value => (value as StringValueSyntax)?.Value);

    public string RequiredText(string key)
    {
        var text = Text(key);
        if (!string.IsNullOrWhiteSpace(text))
            return text;
        if (text is not null || !Has(key))
            Note(ConfigurationCodes.KeyMissing, LineOf(key), $"{Place(key)} is missing.", $"Add {key} = \"...\".");
        return "";
    }

    public double? Number(string key, double least, double most) => Read<double?>(key, $"a number from {Show(least)} to {Show(most)}", value => value switch
    {
        FloatValueSyntax f when f.Value >= least && f.Value <= most => f.Value,
        IntegerValueSyntax i when i.Value >= least && i.Value <= most => i.Value,
        _ => null,
    });

    public int? Whole(string key, int least, int most) => Read<int?>(key, $"a whole number from {least} to {most}", value =>
        value is IntegerValueSyntax i && i.Value >= least && i.Value <= most ? (int)i.Value : null);

    public bool? Flag(string key) => Read<bool?>(key, "true or false", value => (value as BooleanValueSyntax)?.Value);

    public T? Choice<T>(string key, IReadOnlyDictionary<string, T> choices) where T : struct => Read<T?>(key, "one of " + string.Join(", ", choices.Keys), value =>
        value is StringValueSyntax { Value: { } text } && choices.TryGetValue(text, out var choice) ? choice : null);

    /// <summary>Notes every key that nobody asked for: a misspelt key must not pass as a default.</summary>
    public void Finish()
    {
        foreach (var (key, entry) in _entries)
            if (!_asked.Contains(key))
                Note(ConfigurationCodes.KeyUnknown, LineOf(entry), $"{Place(key)} is not known here.", $"Known: {string.Join(", ", _asked.Order())}.");
    }

    public void Note(Code code, int line, string message, string remedy) => _mistakes.Add(FileMistake.At(line, code, message, remedy));

    private T? Read<T>(string key, string wanted, Func<ValueSyntax?, T?> convert)
    {
        _asked.Add(key);
        if (!_entries.TryGetValue(key, out var entry))
            return default;
        var value = convert(entry.Value);
        if (value is null)
            Note(ConfigurationCodes.ValueUnusable, LineOf(entry), $"{Place(key)} = {entry.Value?.ToString().Trim()} is not {wanted}.", $"Write {wanted}.");
        return value;
    }

    private string Place(string key) => Name.Length == 0 ? key : $"{Name}.{key}";

    private static int LineOf(KeyValueSyntax entry) => entry.Span.Start.Line + 1;

    private static string Show(double number) => number.ToString(CultureInfo.InvariantCulture);
}
