
namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>A step held against what had been predicted for it.</summary>
/// <param name="Predicted">Cross weight that the next reading was expected to show, percent.</param>
/// <param name="Observed">Cross weight that it showed, percent.</param>
/// <param name="Finding">Null when they agree within their uncertainty.</param>
/// <param name="Causes">Likely causes when they do not, the best explanation first.</param>
sealed record StepCheck(Value Predicted, Value Observed, Diagnostic? Finding, IReadOnlyList<LikelyCause> Causes)
{
    /// <summary>True when the step did what it should have done.</summary>
    public bool Agrees => Finding is null;
}
