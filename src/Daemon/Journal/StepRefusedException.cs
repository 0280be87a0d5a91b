using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Cars;

namespace ScaleLink.Daemon.Journal;

/// <summary>A step of a workflow that was not taken. Nothing of it is in the ledger, and the state is as it was.</summary>
public sealed class StepRefusedException : Exception
{
    /// <summary>For every reason at once; the first one names the whole.</summary>
    public StepRefusedException(params IReadOnlyList<Finding> findings)
        : base(string.Join(' ', findings ?? [])) => Findings = findings ?? [];

    /// <summary>For one reason.</summary>
    public StepRefusedException(string code, string message, string mend, Exception? inner = null)
        : base(message, inner) => Findings = [new(code, message, mend)];

    /// <summary>For a reason of the arithmetic of calibration.</summary>
    public StepRefusedException(Refusal refusal)
        : this(Sentence(refusal))
    {
    }

    /// <summary>Why, at least one.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The reason that names the whole.</summary>
    public Finding Finding => Findings[0];

    /// <summary>A reason of the arithmetic of calibration as a sentence.</summary>
    public static Finding Sentence(Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return new(refusal.Code, $"{refusal.Message}.", refusal.Mend);
    }
}
