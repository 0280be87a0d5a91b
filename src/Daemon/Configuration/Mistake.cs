namespace ScaleLink.Daemon.Configuration;

/// <summary>One thing wrong in the bay file: its code, its line (1-based; 0 for the file as a whole), what is wrong, and the mend.</summary>
public sealed record Mistake(string Code, int Line, string Message, string Mend)
{
    /// <summary>One line for a terminal or a log.</summary>
    public string Describe(string file) => Line > 0
        ? $"{file}:{Line}: {Code}: {Message} {Mend}"
        : $"{file}: {Code}: {Message} {Mend}";
}
