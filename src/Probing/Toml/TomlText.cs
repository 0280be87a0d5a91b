namespace ScaleLink.Probing.Toml;

/// <summary>Texts in TOML.</summary>
internal static class TomlText
{
    /// <summary>A basic string.</summary>
    public static string Quoted(string text) => $"\"{text.Replace("\\", "\\\\").Replace("\"", "\\\"")}\"";

    /// <summary>A literal string, in which a backslash is one. It cannot hold a single quote: the pattern says that by its number.</summary>
    public static string Literal(string pattern) => $"'{pattern.Replace("'", @"\x27")}'";
}
