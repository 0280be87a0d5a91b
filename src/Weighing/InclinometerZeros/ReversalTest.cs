namespace ScaleLink.Weighing.InclinometerZeros;

/// <summary>
/// Tilt of a surface and zero of an inclinometer from two readings on the same marks, the second turned by 180 degrees:
/// what turns with the instrument is its zero, what does not is the surface.
/// </summary>
/// <param name="TiltDeg">Tilt of the surface along the first direction, degrees.</param>
/// <param name="ZeroDeg">What the instrument reads on a level surface, degrees: subtract it from its readings.</param>
/// <param name="StandardUncertaintyDeg">Of both, degrees.</param>
sealed record ReversalTest(double TiltDeg, double ZeroDeg, double StandardUncertaintyDeg)
{
    /// <summary>From one pair of readings.</summary>
    public static ReversalTest Of(double readingDeg, double reversedDeg, double readingUncertaintyDeg) =>
        new((readingDeg - reversedDeg) / 2, (readingDeg + reversedDeg) / 2, readingUncertaintyDeg / Math.Sqrt(2));

    /// <summary>From several pairs on the same marks; they also show whether the instrument repeats.</summary>
    /// <exception cref="DiagnosticException">Fewer than two pairs, or zeros that vary more than the readings are good to.</exception>
    public static ReversalTest Of(IReadOnlyList<(double ReadingDeg, double ReversedDeg)> pairs, double readingUncertaintyDeg)
    {
        if (pairs.Count < 2)
            throw new DiagnosticException(new Diagnostic(PatchCodes.ReversalDisagrees, "One pair of readings cannot show whether the instrument repeats.", "Read both ways at least twice."));
        var each = pairs.Select(p => Of(p.ReadingDeg, p.ReversedDeg, readingUncertaintyDeg)).ToList();
        var zero = each.Average(t => t.ZeroDeg);
        var worst = each.Max(t => Math.Abs(t.ZeroDeg - zero));
        // Three and a half: one honest pair in two thousand lies further out.
        if (worst > 3.5 * readingUncertaintyDeg / Math.Sqrt(2))
            throw new DiagnosticException(new Diagnostic(PatchCodes.ReversalDisagrees, $"The zero came out differently by {worst:F3} degrees between pairs.",
                "Put the instrument on the same marks each way, wipe the surface, let it warm up, and repeat."));
        return new(each.Average(t => t.TiltDeg), zero, readingUncertaintyDeg / Math.Sqrt(2 * pairs.Count));
    }
}
