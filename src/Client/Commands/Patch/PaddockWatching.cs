using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Commands;

/// <summary>Shows a watch over empty pads while it goes on, and its outcome.</summary>
internal sealed class PaddockWatching(DaemonConnection daemon, Shell shell, bool json)
{
    private static readonly TimeSpan AskEvery = TimeSpan.FromSeconds(1);
    // A log needs no more.
    private const double LineEverySeconds = 30;
    private const double JsonEverySeconds = 5;

    public Task<PaddockView> Ask(CancellationToken stop) => daemon.Ask(o => daemon.Paddock.GetPaddockAsync(new GetPaddockRequest(), o), stop);

    /// <summary>Shows the watch until it has ended, or the user leaves.</summary>
    public async Task<int> Run(PaddockView view, CancellationToken stop)
    {
        try
        {
            using var screen = shell.CanRedraw && !json ? new LineScreen(shell) : null;
            var told = double.NegativeInfinity;
            while (view.Now is { } now)
            {
                if (screen is not null)
                    Draw(screen, view);
                else if (now.ElapsedS - told >= (json ? JsonEverySeconds : LineEverySeconds))
                    told = Say(view, now.ElapsedS);
                await Task.Delay(AskEvery, shell.Time, stop);
                view = await Ask(stop);
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            if (!json)
                shell.WriteLine("The watch goes on. scalelink patch paddock shows it again; with --stop it ends.");
            return ExitCodes.Done;
        }

        return Tell(view);
    }

    /// <summary>The newest outcome.</summary>
    public int Tell(PaddockView view)
    {
        shell.Write(view, json, v => PaddockPage.Outcome(v.Last, shell.Glyphs));
        return view.Last?.Report is { Verdict: PaddockVerdict.Weigh or PaddockVerdict.Compare } ? ExitCodes.Done : ExitCodes.NotAchieved;
    }

    private void Draw(LineScreen screen, PaddockView view)
    {
        var page = new Page(screen.Size.Width);
        foreach (var line in PaddockPage.Progress(view.Now, shell.Glyphs))
            page.Wrap(line, 6);
        screen.Show(page.ToLines(shell, screen.Size.Height));
    }

    private double Say(PaddockView view, double elapsed)
    {
        shell.Write(view, json, v => PaddockPage.Progress(v.Now, shell.Glyphs).Take(2));
        return elapsed;
    }
}
