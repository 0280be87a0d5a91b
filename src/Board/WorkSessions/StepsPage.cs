using Microsoft.AspNetCore.Components;
using ScaleLink.Board.Parts;

namespace ScaleLink.Board.WorkSessions;

/// <summary>A page on which steps of the session are taken: drawn again, too, when one is under way or was answered.</summary>
public abstract class StepsPage : BayPage
{
    [Inject]
    private protected SessionSteps Steps { get; set; } = null!;

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        Steps.Changed += StateHasChanged;
    }

    /// <inheritdoc/>
    protected override void Leave() => Steps.Changed -= StateHasChanged;
}
