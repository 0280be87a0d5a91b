using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Calibration.Trim;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Weighing.Calibration.Procedure;

/// <summary>The outcome of a calibration procedure.</summary>
sealed record ProcedureReport
{
    /// <summary>Why the calibration procedure gives no calibration; empty when it does.</summary>
    public required IReadOnlyList<Diagnostic> Refusals { get; init; }

    /// <summary>The new calibration; null when refused.</summary>
    public PadCalibration? Calibration { get; init; }

    /// <summary>The curve; null when none could be drawn.</summary>
    public CurveFit? Curve { get; init; }

    /// <summary>What the calibration procedure shows of the pad.</summary>
    public PadCharacteristics? Characteristics { get; init; }

    /// <summary>Held against class III.</summary>
    public ClassGrade? Grade { get; init; }

    /// <summary>What moved since the calibration before; no refusal by itself.</summary>
    public IReadOnlyList<ProcedureShift> Shifts { get; init; } = [];

    /// <summary>Sources of error that were neither tested nor stated, and that the uncertainty leaves out.</summary>
    public IReadOnlyList<string> NotCovered { get; init; } = [];

    /// <summary>What the corner-load test came to; null where there was none.</summary>
    public CellTrims? Trims { get; init; }
}
