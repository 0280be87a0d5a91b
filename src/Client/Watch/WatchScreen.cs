using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Watch;

/// <summary>Keeps the live picture on the terminal.</summary>
internal sealed class WatchScreen(Shell shell, DaemonConnection daemon)
{
    private readonly SteadyTexts _steady = new(daemon.Time);
    private volatile Judged<ListPadsResponse>? _pads;

    /// <summary>Settled readings so far. Only to be touched from <see cref="OnView"/> while the screen runs.</summary>
    public StepTrace Trace { get; } = new();

    /// <summary>Called before each view is drawn.</summary>
    public Action<Judged<Loads>>? OnView { get; init; }

    /// <summary>What to say of the crew; nothing: the daemon's remark is shown.</summary>
    public Func<string?> Action { get; init; } = () => null;

    /// <summary>The line at the foot.</summary>
    public string Foot { get; init; } = $"{daemon.Name}   Ctrl-C ends";

    /// <summary>Draws until <paramref name="stop"/>.</summary>
    public async Task Run(double rateHz, CancellationToken stop)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
        using var screen = new LineScreen(shell);
        var pads = FollowPads(end.Token);
        try
        {
            await foreach (var view in new LoadsFeed(daemon, rateHz).WithCancellation(stop))
            {
                OnView?.Invoke(view);
                Trace.Add(view);
                var scene = new WatchScene { Loads = view, Pads = _pads, Trace = Trace, Action = Action(), Steady = _steady, Foot = Foot };
                screen.Show(WatchPage.Draw(scene, screen.Size, shell.Glyphs).ToLines(shell.HasColour));
            }
        }
        finally
        {
            await end.CancelAsync();
            await pads.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task FollowPads(CancellationToken stop)
    {
        await foreach (var view in new PadsFeed(daemon).WithCancellation(stop))
            _pads = view;
    }
}
