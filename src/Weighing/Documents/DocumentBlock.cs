using System.Diagnostics.CodeAnalysis;

namespace ScaleLink.Weighing.Documents;

/// <summary>
/// One block of a file that people write, read field by field, whatever the file's syntax. Every mistake is noted with its
/// place and reading goes on, so that all are told at once; a field that nobody asked for is a mistake too.
/// </summary>
/// <typeparam name="TField">How the syntax holds a field.</typeparam>
abstract class DocumentBlock<TField>
{
    readonly Dictionary<string, TField> fields = new(StringComparer.Ordinal);
    readonly HashSet<string> asked = new(StringComparer.Ordinal);

    /// <summary>A block at <paramref name="place"/>; empty for the whole document.</summary>
    protected DocumentBlock(string place) => Place = place;

    /// <summary>Where the block stands in the document.</summary>
    public string Place { get; }

    /// <summary>The code of a field that is not known.</summary>
    protected abstract Code UnknownCode { get; }

    /// <summary>The code of a field of the wrong kind.</summary>
    protected abstract Code WrongKindCode { get; }

    /// <summary>True when the field was written, whatever its kind.</summary>
    public bool Has(string key) => fields.ContainsKey(key);

    /// <summary>Where that field stands in the document.</summary>
    public string At(string key) => Place.Length == 0 ? key : $"{Place}.{key}";

    /// <summary>Gives a field that was written under its earlier name its present one; false when there was nothing to rename.</summary>
    protected bool Rename(string before, string now)
    {
        if (fields.ContainsKey(now) || !fields.Remove(before, out var value))
            return false;
        fields.Add(now, value);
        return true;
    }

    /// <summary>Notes a mistake about one field.</summary>
    public abstract void Note(Code code, string key, Sentence message, Sentence remedy);

    /// <summary>Notes every field that nobody asked for: a misspelt one must not pass as a default.</summary>
    public void Finish()
    {
        foreach (var key in fields.Keys.Where(k => !asked.Contains(k)))
            Note(UnknownCode, key, $"{At(key)} is not known here.", $"Known: {string.Join(", ", asked.Order())}.");
    }

    /// <summary>Takes a field in; one that stands twice is noted.</summary>
    protected void Add(string key, TField field)
    {
        if (!fields.TryAdd(key, field))
            Note(UnknownCode, key, $"{At(key)} stands twice.", "Take one of them out.");
    }

    /// <summary>The field as it was written; false when it was not. Either way it counts as asked for.</summary>
    protected bool Ask(string key, [MaybeNullWhen(false)] out TField field)
    {
        asked.Add(key);
        return fields.TryGetValue(key, out field);
    }

    /// <summary>The field as it was written, without asking for it.</summary>
    protected TField? Peek(string key) => fields.GetValueOrDefault(key);

    /// <summary>The field's value; nothing when it was not written, or is not <paramref name="wanted"/>, which is noted.</summary>
    protected T? Read<T>(string key, string wanted, Func<TField, T?> convert)
    {
        ArgumentNullException.ThrowIfNull(convert);
        if (!Ask(key, out var field))
            return default;
        var value = convert(field);
        if (value is null)
            Note(WrongKindCode, key, $"{At(key)} = {Shown(field)} is not {wanted}.", $"Write {wanted}.");
        return value;
    }

    /// <summary>The field's value as it was written, short enough for a sentence.</summary>
    protected abstract string Shown(TField field);
}
