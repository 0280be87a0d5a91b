using ScaleLink.Api.V1;

namespace ScaleLink.Board.WorkSessions;

/// <summary>The one action that comes next while perches are turned.</summary>
internal enum CrewStep
{
    /// <summary>Something that wants another view.</summary>
    Elsewhere,
    /// <summary>What is left of the plan was turned.</summary>
    Turn,
    /// <summary>A reading is put on record.</summary>
    Weigh,
}

/// <summary>What it is in a session.</summary>
internal static class CrewSteps
{
    public static CrewStep StepNow(this Session session) => session switch
    {
        { State: SessionState.Naming or SessionState.Preparing } or { CanConfirm: true } => CrewStep.Elsewhere,
        { WeighNext: true } => CrewStep.Weigh,
        { State: SessionState.Finishing, OpenAdjustments.Count: 0 } => CrewStep.Elsewhere,
        _ => session.Left().Count > 0 ? CrewStep.Turn : CrewStep.Weigh,
    };
}
