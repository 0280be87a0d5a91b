using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.SiteCheck;

/// <summary>Shows a watch over empty pads while it goes on, and its outcome.</summary>
internal sealed class SiteCheckWatching(DaemonConnection daemon, Shell shell, bool json)
{
    private static readonly TimeSpan AskEvery = TimeSpan.FromSeconds(1);
    // A log needs no more.
    private const double LineEverySeconds = 30;
    private const double JsonEverySeconds = 5;

    public Task<SiteCheckView> Ask(CancellationToken stop) => daemon.Ask(o => daemon.SiteCheck.GetSiteCheckAsync(new GetSiteCheckRequest(), o), stop);

    /// <summary>Shows the watch until it has ended, or the user leaves.</summary>
    public async Task<int> Run(SiteCheckView view, CancellationToken stop)
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
                shell.WriteLine("The watch goes on. scalelink patch site-check shows it again; with --stop it ends.");
            return ExitCodes.Done;
        }

        return Tell(view);
    }

    /// <summary>The newest outcome.</summary>
    public int Tell(SiteCheckView view)
    {
        shell.Write(view, json, v => SiteCheckPage.Outcome(v.Last, shell.Glyphs));
        return view.Last?.Report is { Verdict: SiteCheckVerdict.Weigh or SiteCheckVerdict.Compare } ? ExitCodes.Done : ExitCodes.NotAchieved;
    }

    private void Draw(LineScreen screen, SiteCheckView view)
    {
        var page = new Page(screen.Size.Width);
        foreach (var line in SiteCheckPage.Progress(view.Now, shell.Glyphs))
            page.Wrap(line, 6);
        screen.Show(page.ToLines(shell, screen.Size.Height));
    }

    private double Say(SiteCheckView view, double elapsed)
    {
        shell.Write(view, json, v => SiteCheckPage.Progress(v.Now, shell.Glyphs).Take(2));
        return elapsed;
    }
}
