using System.Runtime.InteropServices;
using CarOnPads.Bench;
using CarOnPads.Control;
using CarOnPads.Ports;
using CarOnPads.Replay;
using CarOnPads.Runtime;

namespace CarOnPads.Hosting;

/// <summary>One run of the program from its options to its clean end.</summary>
static class Run
{
    /// <summary>Name of the port that Modbus slaves share.</summary>
    public const string Bus = "BUS";

    public static async Task<int> RunAsync(RunOptions options)
    {
        using var end = new CancellationTokenSource();
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, End);
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, End);
        if (options.ExitWithStdin)
            _ = EndWithStdinAsync(end);
        if (options.Replay.Count > 0)
            Play(options, end.Token);
        else
            await DriveAsync(options, end.Token);
        RemoveIfEmpty(options.PortDirectory);
        return 0;

        void End(PosixSignalContext signal)
        {
            signal.Cancel = true;
            end.Cancel();
        }
    }

    static async Task DriveAsync(RunOptions options, CancellationToken end)
    {
        var scenario = options.Scenario is { } file ? Scenario.Read(file) : null;
        await using var control = new ControlServer(options.Control);
        using var bay = new Bay(options.Bay, wheel => Port(options, wheel.ToString()), () => Port(options, Bus));
        scenario?.Schedule(bay, Complain);
        Say(ReadyLine.Of(bay, control.Address, options.Lines));
        new RealTime(bay, control, TimeProvider.System).Run(end);
    }

    static void Play(RunOptions options, CancellationToken end)
    {
        var recordings = options.Replay.Select(NamedRecording.Read).ToList();
        using var player = new Player(recordings, name => Port(options, name));
        Say(ReadyLine.Of(recordings, player));
        new PlayTime(player, options.Pace, TimeProvider.System).Run(() => Say("""{"over":true}"""), end);
    }

    static void Say(string line)
    {
        Console.Out.WriteLine(line);
        Console.Out.Flush();
    }

    public static void Complain(SimulatorException e) =>
        Console.Error.WriteLine($"car-on-pads: {e.Code} {e.Message} {e.Remedy}");

    static IPadPort Port(RunOptions options, string name)
    {
        if (options.PortDirectory is not { } directory || OperatingSystem.IsWindows())
            return new TcpPort(0);
        var cable = new PseudoTerminalPort(directory, name);
        return options.Lines.TryGetValue(name, out var line) ? new LinePort(cable, line) : cable;
    }

    static async Task EndWithStdinAsync(CancellationTokenSource end)
    {
        var input = Console.OpenStandardInput();
        var buffer = new byte[256];
        try
        {
            while (await input.ReadAsync(buffer, end.Token) > 0)
            {
                // What is written there means nothing; only its end does.
            }

            await end.CancelAsync();
        }
        catch (Exception e) when (e is OperationCanceledException or ObjectDisposedException)
        {
            // The program ended first.
        }
    }

    static void RemoveIfEmpty(string? directory)
    {
        if (Directory.Exists(directory) && !Directory.EnumerateFileSystemEntries(directory).Any())
            Directory.Delete(directory);
    }
}
