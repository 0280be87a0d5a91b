using ScaleLink.Weighing.PadInterchange;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>How a pad interchange ended.</summary>
/// <param name="At">UTC.</param>
/// <param name="Who">By whom.</param>
/// <param name="Remark">A remark, or why it was given up.</param>
/// <param name="Result">Absent when it was given up.</param>
internal sealed record InterchangeEnding(DateTimeOffset At, string Who, string Remark, InterchangeResult? Result);

/// <summary>One pad interchange as the ledger knows it.</summary>
internal sealed record InterchangeRecord
{
    /// <summary>Number of the entry that began it.</summary>
    public required long Id { get; init; }

    /// <summary>UTC.</summary>
    public required DateTimeOffset BegunAt { get; init; }

    /// <summary>By whom.</summary>
    public required string BegunBy { get; init; }

    /// <summary>Its weighings.</summary>
    public InterchangeFlow Flow { get; init; } = new();

    /// <summary>Absent while it goes on.</summary>
    public InterchangeEnding? Ending { get; init; }

    /// <summary>Whether it still goes on.</summary>
    public bool IsOpen => Ending is null;

    /// <summary>This after one more event. What was acknowledged once is not judged again.</summary>
    public InterchangeRecord After(InterchangeEvent happened, string who, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(happened);
        return happened switch
        {
            { Weighed: { } reading } => this with { Flow = Flow.With(reading) },
            { ThrownAway: { } number } => this with { Flow = Flow.Without(number) },
            { Finished: { } result } => this with { Ending = new InterchangeEnding(at, who, happened.Note ?? "", result) },
            { Ended: { } reason } => this with { Ending = new InterchangeEnding(at, who, reason, null) },
            _ => this,
        };
    }
}
