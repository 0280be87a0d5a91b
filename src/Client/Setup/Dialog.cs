using ScaleLink.Client.Calibration;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Setup;

/// <summary>Questions in lines. A terminal is read key by key, so that what happens meanwhile can be told; anything else line by line.</summary>
internal sealed class Dialog(Shell shell)
{
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(50);
    private readonly ScriptOrders? _lines = shell.CanRedraw ? null : new ScriptOrders(shell.In);
    private string _typed = "";

    /// <summary>Lines of a script, for who reads them as well; nothing on a terminal.</summary>
    public ScriptOrders? Lines => _lines;

    /// <summary>A line that was entered since, if any.</summary>
    public string? Poll()
    {
        if (_lines is not null)
            return _lines.TryTake(out var line) ? line : null;
        while (shell.Key() is { } key)
        {
            if (key.Key == ConsoleKey.Enter)
            {
                var line = _typed.Trim();
                _typed = "";
                shell.WriteLine("");
                return line;
            }

            if (key.Key == ConsoleKey.Backspace && _typed.Length > 0)
            {
                _typed = _typed[..^1];
                Echo("\b \b");
            }
            else if (!char.IsControl(key.KeyChar))
            {
                _typed += key.KeyChar;
                Echo($"{key.KeyChar}");
            }
        }

        return null;
    }

    /// <summary>Waits for a line, on this thread; nothing: there will be none.</summary>
    public string? Line(CancellationToken stop)
    {
        if (_lines is null)
            return shell.In.ReadLine();
        while (!_lines.HasEnded)
        {
            if (_lines.TryTake(out var line))
                return line;
            if (stop.WaitHandle.WaitOne(Look))
                return null;
        }

        return null;
    }

    private void Echo(string text)
    {
        shell.Out.Write(text);
        shell.Out.Flush();
    }

    /// <summary>Asks, and waits for a line.</summary>
    public async Task<string> Ask(string question, CancellationToken stop)
    {
        if (_lines is not null)
            shell.WriteLine(question);
        else
            Echo($"{question} ");
        while (true)
        {
            if (Poll() is { } line)
                return line;
            await Task.Delay(Look, shell.Time, stop);
        }
    }
}
