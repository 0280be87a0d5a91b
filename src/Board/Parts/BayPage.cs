using Microsoft.AspNetCore.Components;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Device;
using ScaleLink.Board.Operating;

namespace ScaleLink.Board.Parts;

/// <summary>A page that is drawn again whenever the bay has been looked at.</summary>
public abstract class BayPage : ComponentBase, IDisposable
{
    [Inject]
    private Heartbeat Heartbeat { get; set; } = null!;

    [Inject]
    private protected BayFeed Feed { get; set; } = null!;

    [Inject]
    private protected DeviceSettings Settings { get; set; } = null!;

    [Inject]
    private protected WorkSteps Steps { get; set; } = null!;

    /// <summary>The bay as judged at the last look.</summary>
    protected BayView View { get; private set; } = null!;

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        View = Feed.View;
        Heartbeat.Looked += Look;
        Settings.Changed += StateHasChanged;
        Steps.Changed += StateHasChanged;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Heartbeat.Looked -= Look;
        Settings.Changed -= StateHasChanged;
        Steps.Changed -= StateHasChanged;
        GC.SuppressFinalize(this);
    }

    private void Look(BayView view)
    {
        View = view;
        StateHasChanged();
    }
}
