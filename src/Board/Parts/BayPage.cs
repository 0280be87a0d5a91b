using Microsoft.AspNetCore.Components;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Device;

namespace ScaleLink.Board.Parts;

/// <summary>A page that is drawn again whenever the bay has been looked at.</summary>
public abstract class BayPage : ComponentBase, IDisposable
{
    private long _drawnAt;

    [Inject]
    private TimeProvider Time { get; set; } = null!;

    [Inject]
    private Heartbeat Heartbeat { get; set; } = null!;

    [Inject]
    private protected BayFeed Feed { get; set; } = null!;

    [Inject]
    private protected DeviceSettings Settings { get; set; } = null!;

    /// <summary>The bay as judged at the last look.</summary>
    protected BayView View { get; private set; } = null!;

    /// <summary>Shortest time between two drawings for what the bay sends. Tables and forms need no more than four a second.</summary>
    protected virtual TimeSpan DrawEvery => TimeSpan.FromMilliseconds(200);

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        View = Feed.View;
        Heartbeat.Looked += Look;
        Settings.Changed += StateHasChanged;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Heartbeat.Looked -= Look;
        Settings.Changed -= StateHasChanged;
        Leave();
        GC.SuppressFinalize(this);
    }

    /// <summary>The page is left: ends what it hears of besides.</summary>
    protected virtual void Leave()
    {
    }

    private void Look(BayView view)
    {
        View = view;
        if (Time.GetElapsedTime(_drawnAt) < DrawEvery)
            return;
        _drawnAt = Time.GetTimestamp();
        StateHasChanged();
    }
}
