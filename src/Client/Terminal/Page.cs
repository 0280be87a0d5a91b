using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Terminal;

/// <summary>Lines of text and pictures below each other, cut to a width.</summary>
internal sealed class Page(int width)
{
    private readonly List<Canvas> _parts = [];

    public void Add(string text, Ink ink = Ink.Normal)
    {
        var canvas = new Canvas(width, 1);
        canvas.Put(0, 0, text, ink);
        _parts.Add(canvas);
    }

    public void Wrap(string text, int rows, Ink ink = Ink.Normal)
    {
        foreach (var line in TextWrap.Lines(text, width, rows))
            Add(line, ink);
    }

    /// <summary>A picture of that many rows; it is drawn from the row given to it.</summary>
    public void Draw(int rows, Action<Canvas, int> draw)
    {
        var canvas = new Canvas(width, rows);
        draw(canvas, 0);
        _parts.Add(canvas);
    }

    /// <summary>As a terminal wants them; text alone where there is none.</summary>
    public IReadOnlyList<string> ToLines(Shell shell, int most) => [.. _parts.SelectMany(p => shell.CanRedraw ? p.ToLines(shell.HasColour) : p.ToPlainLines()).Take(most)];
}
