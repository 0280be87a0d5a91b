using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Json;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.Watch;

/// <summary>The loads as lines.</summary>
internal static class LoadsWriting
{
    private static readonly TimeSpan LeastEvery = TimeSpan.FromSeconds(1);

    /// <summary>One object for every message, and one whenever the state changes without a message.</summary>
    public static async Task Json(DaemonConnection daemon, Shell shell, double rateHz, CancellationToken stop)
    {
        (Freshness, string?)? written = null;
        await foreach (var view in new LoadsFeed(daemon, rateHz).WithCancellation(stop))
        {
            var state = (view.Freshness, view.Trouble?.Code);
            if (view.IsNew || state != written)
                shell.WriteJson(LoadsJson.Of(view), ClientJson.Default.LoadsJson);
            written = state;
        }
    }

    /// <summary>A line at every change of state, verdict or aim, and otherwise one a second.</summary>
    public static async Task Plain(DaemonConnection daemon, Shell shell, double rateHz, CancellationToken stop)
    {
        var line = new PlainLine(shell.Glyphs);
        var writtenAt = 0L;
        object? written = null;
        await foreach (var view in new LoadsFeed(daemon, rateHz).WithCancellation(stop))
        {
            var state = Gist(view);
            if (state.Equals(written) && shell.Time.GetElapsedTime(writtenAt) < LeastEvery)
                continue;
            shell.WriteDated(line.Of(view));
            (written, writtenAt) = (state, shell.Time.GetTimestamp());
        }
    }

    private static (Freshness, Verdict?, Aim, string?) Gist(Judged<Loads> view) =>
        (view.Freshness, view.Message?.Verdict, view.Freshness == Freshness.Live ? view.Message?.Aim ?? Aim.Unknown : Aim.Unknown, view.Trouble?.Code);
}
