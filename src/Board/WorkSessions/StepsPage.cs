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

    // Not while a step is under way either, but no button goes grey for that moment: it would lose the focus, and who works by keys the place. What is pressed
    // meanwhile is passed over.
    private protected bool CanAct => View.WorkSessions.Live is not null && Settings.HasName;

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
