using Microsoft.JSInterop;
using ScaleLink.Api.V1;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Readings;

namespace ScaleLink.Board.Device;

/// <summary>Runs beside all pages: keeps the trace, tells by sound or vibration that the car has settled, rests while nobody sees the page.</summary>
internal sealed class SettledSignal(BayFeed feed, Heartbeat heartbeat, SettleTrace trace, DeviceSettings settings, Browser browser) : IDisposable
{
    private DotNetObjectReference<SettledSignal>? _self;
    private bool _wasUnsettled;

    public void Start()
    {
        heartbeat.Looked += Look;
        browser.WatchVisibility(_self = DotNetObjectReference.Create(this));
    }

    /// <summary>Called by the browser.</summary>
    [JSInvokable]
    public void OnVisible(bool isVisible) => feed.Show(isVisible);

    public void Dispose()
    {
        heartbeat.Looked -= Look;
        _self?.Dispose();
    }

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
            browser.Chime();
        if (settings.Vibrates)
            browser.Vibrate();
    }
}
