using System.Text;
using Microsoft.Win32.SafeHandles;
using Spectre.Console;

namespace ScaleLink.Client.Runtime;

/// <summary>What a command has around it: where it writes, what that can show, and the clock.</summary>
internal sealed record Shell
{
    private const int LogWidth = 120;
    private const int StandardOutput = 1;

    public required TextWriter Out { get; init; }
    public required TextWriter Error { get; init; }
    public required TimeProvider Time { get; init; }
    /// <summary>Whether the output is a terminal whose cursor can be moved.</summary>
    public required bool CanRedraw { get; init; }
    public required bool HasColour { get; init; }
    public required Glyphs Glyphs { get; init; }
    /// <summary>Lines from whoever runs the program; nothing unless said otherwise.</summary>
    public TextReader In { get; init; } = TextReader.Null;
    /// <summary>Whether somebody sits at the input who can be asked.</summary>
    public bool HasTyping { get; init; }
    /// <summary>The next key that was pressed, if any, when the input is a terminal.</summary>
    public Func<ConsoleKeyInfo?> Key { get; init; } = () => null;
    /// <summary>What earlier commands said once; absent where nothing is remembered.</summary>
    public Memory? Memory { get; init; }
    /// <summary>Columns and rows at this instant.</summary>
    public required Func<(int Width, int Height)> Size { get; init; }

    /// <summary>The shell around this process. NO_COLOR, dumb terminals and redirected output are heeded.</summary>
    public static Shell OfThisProcess()
    {
        // Also switches a Windows console to escape sequences.
        var capabilities = AnsiConsole.Profile.Capabilities;
        var canRedraw = capabilities.Ansi && !Console.IsOutputRedirected;
        var isUnicode = Console.OutputEncoding.CodePage is 65001 or 1200 && Environment.GetEnvironmentVariable("TERM") != "linux";
        return new Shell
        {
            Out = Output(),
            Error = Console.Error,
            In = Console.In,
            HasTyping = !Console.IsInputRedirected && !Console.IsOutputRedirected,
            Key = () => !Console.IsInputRedirected && Console.KeyAvailable ? Console.ReadKey(intercept: true) : null,
            Time = TimeProvider.System,
            Memory = Memory.OfThisUser(),
            CanRedraw = canRedraw,
            HasColour = canRedraw && capabilities.ColorSystem != ColorSystem.NoColors,
            Glyphs = isUnicode ? Glyphs.Rich : Glyphs.Plain,
            Size = () => canRedraw ? (Console.WindowWidth, Console.WindowHeight) : (LogWidth, int.MaxValue),
        };
    }

    // The console hides that the reader of a pipe has gone; a plain stream tells, and a watch can end. A file has no reader.
    private static TextWriter Output()
    {
        if (!Console.IsOutputRedirected || OperatingSystem.IsWindows())
            return Console.Out;
        var stream = new FileStream(new SafeFileHandle(StandardOutput, ownsHandle: false), FileAccess.Write, bufferSize: 0);
        return stream.CanSeek ? Console.Out : new StreamWriter(stream, new UTF8Encoding(false));
    }
}
