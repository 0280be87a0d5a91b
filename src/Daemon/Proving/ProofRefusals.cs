using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>Refusals of the bench where pads are proved, beside those of the arithmetic.</summary>
internal static class ProofRefusals
{
    public static readonly RefusalKind NotLive = new("SL-343", "The pad is not live", "Mend its link; the proof goes on where it stands.");

    public static readonly RefusalKind NoStart = new("SL-342", "The pad has no calibration to start from", "Give kg_per_count in the bay file: kg at capacity by counts at capacity, from the cells' data sheet; a fifth off is near enough.");

    public static readonly RefusalKind Running = new("SL-351", "This pad is being proved already", "Go on with that proof, or abandon it first.");

    public static readonly RefusalKind NoProof = new("SL-352", "This pad is not being proved", "Start a proof.");

    public static readonly RefusalKind NotFound = new("SL-353", "There is no such calibration or proof", "List the calibrations or the proofs, and name one by its number.");

    public static readonly RefusalKind InForce = new("SL-354", "This calibration is in force already", "Choose another one.");

    public static readonly RefusalKind Nameless = new("SL-355", "A name or a reason is missing", "Say who, and why where it is asked for: both stand in the ledger.");

    public static readonly RefusalKind NoRotation = new("SL-356", "The pads are not being moved round", "Begin with a weighing: scalelink proofs rotation record.");
}
