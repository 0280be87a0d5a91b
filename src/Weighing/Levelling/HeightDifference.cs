using ScaleLink.Weighing.InclinometerZeros;

namespace ScaleLink.Weighing.Levelling;

/// <summary>How much higher one pad stands than another, measured directly.</summary>
/// <param name="From">Lower end of the measurement.</param>
/// <param name="To">The pad whose height above the other is stated.</param>
/// <param name="Mm">mm.</param>
/// <param name="StandardUncertaintyMm">One standard uncertainty, mm.</param>
sealed record HeightDifference(Corner From, Corner To, double Mm, double StandardUncertaintyMm)
{
    /// <summary>
    /// From a straight beam across two pads with an inclinometer on it, read once and again with beam and inclinometer
    /// turned end for end: half the difference is the slope, free of the zero of either.
    /// </summary>
    /// <param name="from">Pad under the end that is the lower one when the first reading is positive.</param>
    /// <param name="to">Pad under the other end.</param>
    /// <param name="spanMm">Distance between the feet of the beam; the pads are taken to be level across their own width.</param>
    /// <param name="readingDeg">First reading, degrees, positive when the end at <paramref name="to"/> is high.</param>
    /// <param name="reversedDeg">Reading after turning, in the instrument's own sign.</param>
    /// <param name="readingUncertaintyDeg">One standard uncertainty of a single reading, degrees.</param>
    /// <exception cref="DiagnosticException">Span or readings are not usable.</exception>
    public static HeightDifference FromReversedBeam(Corner from, Corner to, double spanMm, double readingDeg, double reversedDeg, double readingUncertaintyDeg)
    {
        if (!(spanMm > 0 && Math.Abs(readingDeg) < 30 && Math.Abs(reversedDeg) < 30 && readingUncertaintyDeg > 0))
            throw new DiagnosticException(new Diagnostic(PatchCodes.InputUnusable, $"Span {Arguments.Mm(spanMm)}, readings {readingDeg} and {reversedDeg} degrees.",
                "Give a span above zero, readings within 30 degrees, and what one reading is good to."));
        var slope = ReversalTest.Of(readingDeg, reversedDeg, readingUncertaintyDeg).TiltDeg * Math.PI / 180;
        return new(from, to, spanMm * Math.Sin(slope), spanMm * Math.Cos(slope) * readingUncertaintyDeg / Math.Sqrt(2) * Math.PI / 180);
    }
}
