namespace ScaleLink.Probing.Toml;

/// <summary>Texts in TOML.</summary>
internal static class TomlText
{
    /// <summary>A basic string.</summary>
    public static string Quoted(string text) => $"\"{string.Concat(text.Select(Letter))}\"";

    /// <summary>A comment of one line: what is no printable character of ASCII is shown as a dot.</summary>
    public static string Comment(string text) => $"# {string.Concat(text.Select(c => c is >= ' ' and <= '~' ? c : '.'))}";

    /// <summary>A literal string, in which a backslash is one. It cannot hold a single quote: the pattern says that by its number.</summary>
    public static string Literal(string pattern) => $"'{pattern.Replace("'", @"\x27")}'";

    private static string Letter(char letter) => letter switch
    {
        '\\' => @"\\",
        '"' => "\\\"",
        < ' ' or '\x7F' => $"\\u{(int)letter:X4}",
        _ => letter.ToString(),
    };
}
