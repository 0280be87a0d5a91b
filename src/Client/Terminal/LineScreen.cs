using System.Text;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Terminal;

/// <summary>
/// The whole terminal, drawn line by line on its second screen: only lines that changed are written, so nothing flickers.
/// What was on the terminal before comes back at the end, with its cursor.
/// </summary>
internal sealed class LineScreen : IDisposable
{
    private const string Enter = "\e[?1049h\e[?25l\e[2J";
    private const string Leave = "\e[0m\e[?25h\e[?1049l";
    private readonly Shell _shell;
    private string[] _shown = [];
    private (int, int) _size;

    public LineScreen(Shell shell)
    {
        _shell = shell;
        Write(Enter);
    }

    /// <summary>Columns and rows now.</summary>
    public (int Width, int Height) Size => _shell.Size();

    /// <summary>Shows lines, each no wider than the screen, from the top; rows below them are empty.</summary>
    public void Show(IReadOnlyList<string> lines)
    {
        var size = Size;
        var text = new StringBuilder();
        if (size != _size)
        {
            // A terminal that changed its size has moved what was on it.
            text.Append("\e[2J");
            _shown = [];
            _size = size;
        }

        var next = lines.Take(size.Height).ToArray();
        for (var row = 0; row < Math.Max(next.Length, _shown.Length); row++)
        {
            var line = row < next.Length ? next[row] : "";
            if (row >= _shown.Length || _shown[row] != line)
                text.Append($"\e[{row + 1};1H{line}\e[0m\e[K");
        }

        _shown = next;
        if (text.Length > 0)
            Write(text.ToString());
    }

    public void Dispose() => Write(Leave);

    private void Write(string text)
    {
        _shell.Out.Write(text);
        _shell.Out.Flush();
    }
}
