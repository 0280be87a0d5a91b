using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using Serilog;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Runs the daemon from bay file to exit code: 0 ended as asked, 1 broke, 2 the bay file or a port has to be fixed first, 143 ended by a signal before it had begun.</summary>
internal static class DaemonHost
{
    private const int Ended = 0, Broke = 1, ToBeRemedied = 2;
    // 128 and the number of SIGTERM, as shells tell it.
    private const int Stopped = 143;
    private const int MostTold = 50;

    // With the start of the program it makes less than five.
    private static readonly TimeSpan LongestCheck = TimeSpan.FromSeconds(4);

    public static async Task<int> Run(StartOptions options, CancellationToken stop)
    {
        if (!options.CheckOnly && options.TakeOverBy is null && SetupHost.IsWanted(options.BayFile) && await SetupHost.Run(options) is { } ended)
            return ended;
        BayFile file;
        try
        {
            file = await Load(options, TimeProvider.System, stop);
        }
        catch (OperationCanceledException)
        {
            return Stopped;
        }

        var mistakes = file.Mistakes.Where(m => !((options.AllowMissing || options.TakeOverBy is not null) && m.Code == LinkCodes.PortMissing)).ToList();
        foreach (var mistake in mistakes.Take(MostTold))
            await Console.Error.WriteLineAsync(mistake.Describe(file.Path));
        if (mistakes.Count > MostTold)
            await Console.Error.WriteLineAsync($"and {mistakes.Count - MostTold} more.");
        if (mistakes.Count > 0)
        {
            await Console.Error.WriteLineAsync($"{mistakes.Count} to correct; not started.");
            return ToBeRemedied;
        }

        if (options.CheckOnly)
        {
            Console.WriteLine($"{file.Path}: good.");
            foreach (var pad in file.Configuration!.Pads.Where(p => p.KgPerCount is null))
                Console.WriteLine($"{pad.Corner} has no kg_per_count: it gives no load until its first calibration (scalelink calibrate {pad.Corner}).");
            return Ended;
        }

        var bay = Resolve(file.Configuration!, options);
        return options.TakeOverBy is { } who ? await TakeOver(bay, who) : await Serve(bay, options);
    }

    // A path can lead to a pipe that nobody writes to, or to a disk that does not answer. A check answers all the same; a start waits, but not deaf.
    private static async Task<BayFile> Load(StartOptions options, TimeProvider time, CancellationToken stop)
    {
        try
        {
            return await Task.Run(() => BayFile.Load(options.BayFile), CancellationToken.None).WaitAsync(options.CheckOnly ? LongestCheck : Timeout.InfiniteTimeSpan, time, stop);
        }
        catch (TimeoutException)
        {
            return BayFile.Unread(options.BayFile, FileMistake.At(0, ConfigurationCodes.CheckTooSlow, $"The bay file was not looked through within {LongestCheck.TotalSeconds:0} s.",
                "See that its path is a plain file on a disk that answers, and so is what it names."));
        }
    }

    // Paths in the bay file are meant from where the file lies; the command line goes before the file.
    private static BayConfiguration Resolve(BayConfiguration bay, StartOptions options) => bay with
    {
        Listen = bay.Listen with { PagePort = options.PagePort ?? bay.Listen.PagePort, GrpcPort = options.GrpcPort ?? bay.Listen.GrpcPort },
        Mqtt = bay.Mqtt with { Port = options.MqttPort ?? bay.Mqtt.Port },
        LedgerPath = Beside(options.BayFile, bay.LedgerPath),
        Recorder = bay.Recorder with { Folder = Beside(options.BayFile, bay.Recorder.Folder) },
    };

    private static string Beside(string bayFile, string path) => Path.GetFullPath(path, Path.GetDirectoryName(Path.GetFullPath(bayFile))!);

    private static async Task<int> TakeOver(BayConfiguration bay, string who)
    {
        try
        {
            var taken = LedgerTakeOver.Run(bay.LedgerPath, bay.Bay, who, TimeProvider.System);
            Console.WriteLine($"{taken.Count} entries from {taken.First} to {taken.Last} count again; they are marked as unchained. Start the daemon as usual, and look at the calibrations and zeros in effect before you weigh.");
            return Ended;
        }
        catch (StartException e)
        {
            await Console.Error.WriteLineAsync(e.Diagnostic.ToString());
            return ToBeRemedied;
        }
    }

    private static async Task<int> Serve(BayConfiguration bay, StartOptions options)
    {
        Log.Logger = Logging.Create();
        try
        {
            await using var app = BayApplication.Build(bay, TimeProvider.System);
            if (bay.Listen.OtherMachines)
                Log.Warning("Other machines are let in at {Address}: anybody on the network can read and operate this bay, there are no rights and no TLS yet", bay.Listen.Address);
            using var parent = options.ExitWithStdin ? ParentWatch.Start(app.Lifetime) : null;
            await app.RunAsync();
            return Ended;
        }
        catch (StartException e)
        {
            await Console.Error.WriteLineAsync(e.Diagnostic.ToString());
            return ToBeRemedied;
        }
        catch (StepRefusedException e)
        {
            await Console.Error.WriteLineAsync(e.Diagnostic.ToString());
            return ToBeRemedied;
        }
        catch (Exception e) when (PortInUse.Explain(e, bay.Listen) is { } taken)
        {
            await Console.Error.WriteLineAsync(taken.ToString());
            return ToBeRemedied;
        }
        catch (Exception e)
        {
            Log.Fatal(e, "The daemon broke");
            return Broke;
        }
        finally
        {
            await Log.CloseAndFlushAsync();
        }
    }
}
