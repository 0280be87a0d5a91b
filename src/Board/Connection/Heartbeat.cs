namespace ScaleLink.Board.Connection;

/// <summary>Makes the page look at the bay again when something came, and four times a second even when nothing does: a value grows old before the crew's eyes.</summary>
internal sealed class Heartbeat : IDisposable
{
    private static readonly TimeSpan LongestSilence = TimeSpan.FromMilliseconds(250);

    private readonly BayFeed _feed;
    private readonly ITimer _timer;

    public Heartbeat(BayFeed feed, TimeProvider time)
    {
        _feed = feed;
        _timer = time.CreateTimer(_ => Beat(), null, LongestSilence, LongestSilence);
        feed.Changed += Beat;
    }

    /// <summary>Told at each look, with the bay as judged now.</summary>
    public event Action<BayView>? Looked;

    public void Dispose()
    {
        _feed.Changed -= Beat;
        _timer.Dispose();
    }

    private void Beat()
    {
        _timer.Change(LongestSilence, LongestSilence);
        Looked?.Invoke(_feed.View);
    }
}
