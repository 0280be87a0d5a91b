using Microsoft.AspNetCore.Components;
using ScaleLink.Board.Parts;

namespace ScaleLink.Board.WorkSessions;

/// <summary>A page on which steps of the session are taken: drawn again, too, when one is under way or was answered.</summary>
public abstract class StepsPage : BayPage
{
    [Inject]
    private protected SessionSteps Steps { get; set; } = null!;

    // A name that this device knows already takes no room above the work. Decided once: the field does not jump while somebody types.
    private protected bool WasNamed { get; private set; }

    private protected bool CanAct => View.WorkSessions.Live is not null && Settings.HasName && !Steps.IsAtWork;

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        WasNamed = Settings.HasName;
        Steps.Changed += StateHasChanged;
    }

    /// <inheritdoc/>
    protected override void Leave() => Steps.Changed -= StateHasChanged;
}
