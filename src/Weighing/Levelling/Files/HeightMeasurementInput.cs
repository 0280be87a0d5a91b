namespace ScaleLink.Weighing.Levelling.Files;

/// <summary>One reading of a level beam, both ways round.</summary>
/// <param name="From">Pad under the end that is low when the first reading is positive.</param>
/// <param name="To">Pad under the other end.</param>
/// <param name="SpanMm">Between the feet, mm.</param>
/// <param name="ReadingDeg">Degrees.</param>
/// <param name="ReversedDeg">Degrees, turned end for end, in the instrument's own sign.</param>
/// <param name="ReadingUncertaintyDeg">One standard uncertainty of a single reading, degrees.</param>
sealed record BeamReading(Corner From, Corner To, double SpanMm, double ReadingDeg, double ReversedDeg, double ReadingUncertaintyDeg);

/// <summary>What the crew measured between the pads: four heights, or differences and beam readings.</summary>
sealed record HeightMeasurementInput
{
    /// <summary>Above one datum, mm. Null: differences instead.</summary>
    public Corners? HeightsMm { get; init; }

    /// <summary>One standard uncertainty of each height, mm.</summary>
    public Corners HeightUncertaintiesMm { get; init; }

    /// <summary>Between pads.</summary>
    public IReadOnlyList<HeightDifference> Differences { get; init; } = [];

    /// <summary>Between pads, by a beam.</summary>
    public IReadOnlyList<BeamReading> Beams { get; init; } = [];

    /// <summary>What it was measured with.</summary>
    public string Note { get; init; } = "";

    /// <summary>The height measurement they make.</summary>
    /// <exception cref="DiagnosticException">They do not fit together, are too few, or contradict each other.</exception>
    public MeasuredHeights Adjust()
    {
        if (HeightsMm is not { } heights)
            return MeasuredHeights.FromDifferences([.. Differences, .. Beams.Select(b =>
                HeightDifference.FromReversedBeam(b.From, b.To, b.SpanMm, b.ReadingDeg, b.ReversedDeg, b.ReadingUncertaintyDeg))]);
        if (Differences.Count + Beams.Count > 0)
            throw new DiagnosticException(new Diagnostic(PatchCodes.InputUnusable, "Heights and differences do not mix.", "Give four heights, or differences and beam readings."));
        return MeasuredHeights.FromHeights(heights, HeightUncertaintiesMm);
    }
}
