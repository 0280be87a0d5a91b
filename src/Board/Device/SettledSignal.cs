using ScaleLink.Api.V1;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Readings;

namespace ScaleLink.Board.Device;

/// <summary>Runs beside all pages: keeps the trace, tells by sound or vibration that the car has settled, rests while nobody sees the page.</summary>
internal sealed class SettledSignal(BayFeed feed, Heartbeat heartbeat, SettleTrace trace, DeviceSettings settings) : IDisposable
{
    private bool _wasUnsettled;

    public void Start()
    {
        heartbeat.Looked += Look;
        Browser.WatchVisibility(feed.Show);
    }

    public void Dispose() => heartbeat.Looked -= Look;

    private void Look(BayView view)
    {
        if (view.Loads.Live is not { } live)
            return;
        trace.Add(live);
        var isSettled = live.Verdict == Verdict.Settled;
        if (isSettled && _wasUnsettled)
            Tell();
        _wasUnsettled = !isSettled;
    }

    private void Tell()
    {
        if (settings.Chimes)
            Browser.Chime();
        if (settings.Vibrates)
            Browser.Vibrate();
    }
}
