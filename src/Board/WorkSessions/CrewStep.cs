using ScaleLink.Api.V1;

namespace ScaleLink.Board.WorkSessions;

/// <summary>The one action that comes next in a session.</summary>
internal enum CrewStep
{
    /// <summary>A check of the preparation, or a last step, is seen to.</summary>
    Check,
    /// <summary>A change that nobody recorded gets its name.</summary>
    Name,
    /// <summary>A step that surprised is explained.</summary>
    Explain,
    /// <summary>What is left of the plan was turned.</summary>
    Turn,
    /// <summary>A reading is put on record.</summary>
    Weigh,
    /// <summary>The session ends with its verdict.</summary>
    Finish,
}

/// <summary>What it is in a session.</summary>
internal static class CrewSteps
{
    public static CrewStep StepNow(this Session session) => session switch
    {
        { State: SessionState.Preparing } => CrewStep.Check,
        { State: SessionState.Naming } => CrewStep.Name,
        { CanConfirm: true } => CrewStep.Explain,
        { WeighNext: true } => CrewStep.Weigh,
        { State: SessionState.Finishing, OpenAdjustments.Count: 0 } => session.LastSteps.Any(IsOpen) ? CrewStep.Check : CrewStep.Finish,
        _ => session.Left().Count > 0 ? CrewStep.Turn : CrewStep.Weigh,
    };

    /// <summary>Whether a check waits to be seen to.</summary>
    public static bool IsOpen(this Check check) => check is { Done: false, Skipped: false };
}
