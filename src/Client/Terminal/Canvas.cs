using System.Text;

namespace ScaleLink.Client.Terminal;

/// <summary>A picture of signs in rows and columns. What lies outside is cut off.</summary>
internal sealed class Canvas
{
    private readonly char[] _signs;
    private readonly Ink[] _inks;

    public Canvas(int width, int height)
    {
        (Width, Height) = (Math.Max(0, width), Math.Max(0, height));
        _signs = new char[Width * Height];
        _inks = new Ink[Width * Height];
        Array.Fill(_signs, ' ');
    }

    public int Width { get; }

    public int Height { get; }

    public void Put(int column, int row, char sign, Ink ink = Ink.Normal)
    {
        if (column < 0 || column >= Width || row < 0 || row >= Height)
            return;
        _signs[row * Width + column] = sign;
        _inks[row * Width + column] = ink;
    }

    /// <summary>Writes text to the right. Returns the column after it.</summary>
    public int Put(int column, int row, string text, Ink ink = Ink.Normal)
    {
        for (var i = 0; i < text.Length; i++)
            Put(column + i, row, text[i], ink);
        return column + text.Length;
    }

    /// <summary>Writes text that ends before <paramref name="end"/>.</summary>
    public void PutBefore(int end, int row, string text, Ink ink = Ink.Normal) => Put(end - text.Length, row, text, ink);

    /// <summary>Makes everything faint: an old picture.</summary>
    public void Fade() => Array.Fill(_inks, Ink.Faint);

    /// <summary>The rows as a terminal wants them; without colours weight alone tells the inks apart.</summary>
    public string[] ToLines(bool hasColour) => [.. Enumerable.Range(0, Height).Select(row => Line(row, hasColour))];

    /// <summary>The rows as text alone, for what is no terminal.</summary>
    public string[] ToPlainLines() => [.. Enumerable.Range(0, Height).Select(row => new string(_signs, row * Width, Width).TrimEnd())];

    private string Line(int row, bool hasColour)
    {
        ReadOnlySpan<char> signs = _signs.AsSpan(row * Width, Width).TrimEnd(' ');
        ReadOnlySpan<Ink> inks = _inks.AsSpan(row * Width, Width);
        var text = new StringBuilder();
        var ink = Ink.Normal;
        for (var i = 0; i < signs.Length; i++)
        {
            if (signs[i] != ' ' && inks[i] != ink)
            {
                ink = inks[i];
                text.Append("\e[0m").Append(Code(ink, hasColour));
            }

            text.Append(signs[i]);
        }

        return ink == Ink.Normal ? text.ToString() : text.Append("\e[0m").ToString();
    }

    // The terminal's own sixteen colours, so that light and dark themes both stay readable.
    private static string Code(Ink ink, bool hasColour) => (ink, hasColour) switch
    {
        (Ink.Normal, _) => "",
        (Ink.Faint, _) => "\e[2m",
        (Ink.Good, true) => "\e[1;32m",
        (Ink.Bad, true) => "\e[1;31m",
        (Ink.Uncertain, true) => "\e[1;33m",
        (Ink.RightFrontPair, true) => "\e[36m",
        (Ink.LeftFrontPair, true) => "\e[35m",
        (Ink.RightFrontPair or Ink.LeftFrontPair, false) => "",
        _ => "\e[1m",
    };
}
