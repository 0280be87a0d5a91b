using System.Globalization;
using Grpc.Core;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Demo;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Setup;

/// <summary>What a daemon is started with.</summary>
/// <param name="BayFile">Where the bay file will be.</param>
/// <param name="PagePort">Port of the page; nothing: the usual one.</param>
/// <param name="MqttPort">Port of the broker; nothing: the usual one.</param>
internal sealed record SetupDaemonOptions(string BayFile, int? PagePort, int? MqttPort);

/// <summary>The daemon that sets the bay up: one that waits for it already, or one that is started here and ends with this program.</summary>
internal sealed class SetupDaemon : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30), AskAgain = TimeSpan.FromMilliseconds(200);
    private readonly ChildProgram? _own;

    private SetupDaemon(ChildProgram? own) => _own = own;

    /// <summary>It was started here.</summary>
    public bool IsOurs => _own is not null;

    /// <exception cref="ClientException">SL-487 the bay file is there already, SL-491 a daemon with a bay runs there, SL-433 the daemon ended, SL-424 it does not answer.</exception>
    public static async Task<SetupDaemon> Find(DaemonConnection daemon, SetupDaemonOptions options, Shell shell, CancellationToken stop)
    {
        if (await SetsUp(daemon, stop) is { } answer)
            return answer ? new SetupDaemon(null) : throw new ClientException(new Diagnostic(SetupCodes.BayRuns, $"A daemon with a bay runs at {daemon.Address} already.", SetupCodes.BayRuns.Remedy));
        var file = Path.GetFullPath(options.BayFile);
        if (Path.Exists(file))
            throw new ClientException(new Diagnostic(SetupCodes.FileThere, $"{file} is there already.", $"Start the daemon with it: scalelinkd --bay {file}; or name another with --bay."));
        var own = ChildProgram.Start("daemon", Programs.Daemon, ["--bay", file, "--grpc-port", $"{daemon.Address.Port}", .. Port("--page-port", options.PagePort), .. Port("--mqtt-port", options.MqttPort)], shell.Time);
        var started = shell.Time.GetTimestamp();
        while (await SetsUp(daemon, stop) is not true)
        {
            if (own.Ended.IsCompleted)
                throw new ClientException(own.Loss());
            if (shell.Time.GetElapsedTime(started) > Patience)
            {
                await own.DisposeAsync();
                throw new ClientException(new Diagnostic(ConnectionCodes.NoAnswer, $"The daemon that was started did not answer within {Patience.TotalSeconds:0} s.", "Try again; the machine may be busy."));
            }

            await Task.Delay(AskAgain, shell.Time, stop);
        }

        return new SetupDaemon(own);
    }

    public ValueTask DisposeAsync() => _own?.DisposeAsync() ?? default;

    private static IEnumerable<string> Port(string option, int? port) => port is { } number ? [option, number.ToString(CultureInfo.InvariantCulture)] : [];

    // True: it sets up. False: it has a bay. Nothing: nobody is there.
    private static async Task<bool?> SetsUp(DaemonConnection daemon, CancellationToken stop)
    {
        try
        {
            return await SetupFeed.Now(daemon, stop) is not null;
        }
        catch (RpcException e) when (e.StatusCode == StatusCode.Unimplemented)
        {
            return false;
        }
        catch (RpcException)
        {
            return null;
        }
    }
}
