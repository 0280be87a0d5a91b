namespace ScaleLink.Daemon.Configuration;

/// <summary>What is wrong in the bay file, with its line.</summary>
internal static class FileMistake
{
    private const int LongestLine = 1000;

    /// <summary>At a line, from 1; 0: about the file as a whole.</summary>
    public static Diagnostic At(int line, Code code, Sentence message, Sentence remedy) => new(code, message, remedy) { Line = line > 0 ? line : null };

    /// <summary>One line for a terminal or a log, whatever the file says.</summary>
    public static string Describe(this Diagnostic mistake, string file) =>
        PlainText.Clean(mistake.Line is { } line ? $"{file}:{line}: {mistake}" : $"{file}: {mistake}", LongestLine);
}
