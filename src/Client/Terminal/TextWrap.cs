namespace ScaleLink.Client.Terminal;

/// <summary>Breaks text between words.</summary>
internal static class TextWrap
{
    /// <summary>At most <paramref name="rows"/> lines of at most <paramref name="width"/> columns; what does not fit ends in "...".</summary>
    public static IReadOnlyList<string> Lines(string text, int width, int rows)
    {
        var lines = new List<string> { "" };
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var piece = word.Length > width ? word[..width] : word;
            if (lines[^1].Length > 0 && lines[^1].Length + 1 + piece.Length > width)
                lines.Add(piece);
            else
                lines[^1] += lines[^1].Length > 0 ? $" {piece}" : piece;
        }

        if (lines.Count <= rows)
            return lines;
        var last = lines[rows - 1];
        lines[rows - 1] = last.Length + 3 <= width ? $"{last}..." : $"{last[..(width - 3)]}...";
        return lines[..rows];
    }
}
