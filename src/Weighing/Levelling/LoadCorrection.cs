namespace ScaleLink.Weighing.Levelling;

/// <summary>Which correction.</summary>
enum CorrectionKind
{
    /// <summary>A tilted cell reads only the component along its axis.</summary>
    Tilt,
    /// <summary>The plane through the pads is not level.</summary>
    Slope,
    /// <summary>The pads do not lie in one plane.</summary>
    Warp,
}

/// <summary>One correction, with its size, so that it can be judged and switched off.</summary>
/// <param name="Kind">Which.</param>
/// <param name="SizeKg">What it adds to each load, kg. Null: refused, or no inclinometer to correct by.</param>
/// <param name="StandardUncertaintyKg">Uncertainty that the correction brings with it, kg; zero when refused.</param>
/// <param name="Applied">False when it was switched off or refused; the size is then stated but not added.</param>
/// <param name="Refusal">Why it was refused.</param>
sealed record LoadCorrection(CorrectionKind Kind, Corners? SizeKg, Corners StandardUncertaintyKg, bool Applied, Diagnostic? Refusal);
