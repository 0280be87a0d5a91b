using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using Serilog;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Runs the daemon from bay file to exit code: 0 ended as asked, 1 broke, 2 the bay file or a port has to be fixed first.</summary>
internal static class DaemonHost
{
    private const int Ended = 0, Broke = 1, ToBeRemedied = 2;

    public static async Task<int> Run(StartOptions options)
    {
        var file = BayFile.Load(options.BayFile);
        var mistakes = file.Mistakes.Where(m => !(options.AllowMissing && m.Code == LinkCodes.PortMissing)).ToList();
        foreach (var mistake in mistakes)
            await Console.Error.WriteLineAsync(mistake.Describe(file.Path));
        if (mistakes.Count > 0)
        {
            await Console.Error.WriteLineAsync($"{mistakes.Count} to correct; not started.");
            return ToBeRemedied;
        }

        if (options.CheckOnly)
        {
            Console.WriteLine($"{file.Path}: good.");
            return Ended;
        }

        return await Serve(Resolve(file.Configuration!, options), options);
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
