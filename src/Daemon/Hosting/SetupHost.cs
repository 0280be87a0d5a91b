using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Setup;
using Serilog;

namespace ScaleLink.Daemon.Hosting;

/// <summary>Runs the setting up of a bay, from a bay file that is not there until it is written.</summary>
internal static class SetupHost
{
    private const int Ended = 0, ToBeRemedied = 2;

    /// <summary>Whether there is a bay to set up: no file, in a folder that is there. A path into nowhere is a mistake, and told as one.</summary>
    public static bool IsWanted(string bayFile)
    {
        var path = Path.GetFullPath(bayFile);
        return !Path.Exists(path) && Directory.Exists(Path.GetDirectoryName(path));
    }

    /// <returns>The exit code; nothing when the bay file is written and the bay is to begin.</returns>
    public static async Task<int?> Run(StartOptions options)
    {
        Log.Logger = Logging.Create();
        var usual = ListenConfiguration.Usual;
        var listen = usual with { PagePort = options.PagePort ?? usual.PagePort, GrpcPort = options.GrpcPort ?? usual.GrpcPort };
        var settings = new SetupSettings(Path.GetFullPath(options.BayFile), listen.PagePort, listen.GrpcPort, options.MqttPort);
        try
        {
            await using var app = SetupApplication.Build(settings, listen, TimeProvider.System);
            var end = app.Services.GetRequiredService<SetupEnd>();
            using var parent = options.ExitWithStdin ? ParentWatch.Start(app.Lifetime) : null;
            Log.Information("There is no bay file at {BayFile} yet: open http://127.0.0.1:{Port}/setup on this machine, or run scalelink setup, to set the bay up", settings.BayFile, listen.PagePort);
            await app.RunAsync();
            return end.HasCome ? null : Ended;
        }
        catch (Exception e) when (PortInUse.Explain(e, listen) is { } taken)
        {
            await Console.Error.WriteLineAsync(taken.ToString());
            return ToBeRemedied;
        }
        finally
        {
            await Log.CloseAndFlushAsync();
        }
    }
}
