namespace ScaleLink.Weighing.InclinometerZeros;

/// <summary>Whether a pad tilts steadily over a window of its inclinometer, and the mean of the newest three quarters.</summary>
static class TiltRest
{
    /// <summary>Length of a window, s.</summary>
    public const double WindowSeconds = 2;

    /// <summary>Parts of the window may differ from its mean by this, degrees: a pad that creeps into a soft floor. Common practice, no published source.</summary>
    public const double ToleranceDeg = 0.02;

    /// <summary>Standard deviation of a sample beyond which the pad counts as shaken, degrees. Common practice, no published source.</summary>
    public const double MostNoiseDeg = 0.25;

    const int Pieces = 4;
    const int FewestPerPiece = 3;
    // Eight comparisons that noise alone should not fail.
    const double Significant = 4;

    /// <summary>The mean; nothing while the pad moves, and with fewer than 12 samples.</summary>
    /// <param name="samples">Pitch and roll, degrees, evenly spaced over the window, oldest first.</param>
    /// <param name="at">UTC of the newest.</param>
    public static TiltReading? Read(IReadOnlyList<(double PitchDeg, double RollDeg)> samples, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(samples);
        return samples.Count >= Pieces * FewestPerPiece && Axis([.. samples.Select(s => s.PitchDeg)]) is { } pitch && Axis([.. samples.Select(s => s.RollDeg)]) is { } roll
            ? new TiltReading(pitch.Mean, roll.Mean, Math.Max(pitch.Uncertainty, roll.Uncertainty), at)
            : null;
    }

    static (double Mean, double Uncertainty)? Axis(double[] window)
    {
        var mean = window.Average();
        var pieces = window.Chunk((window.Length + Pieces - 1) / Pieces).Where(piece => piece.Length > 1).ToList();
        var variance = pieces.Sum(piece => SquaresAbout(piece.Average(), piece)) / pieces.Sum(piece => piece.Length - 1);
        var furthest = pieces.Max(piece => (Math.Abs(piece.Average() - mean) - Significant * Math.Sqrt(variance / piece.Length)));
        // Whoever asks again until the pad lies still gets the first window that passes, and the end of a swing in its oldest part.
        var kept = window[pieces[0].Length..];
        return Math.Sqrt(variance) <= MostNoiseDeg && furthest <= ToleranceDeg
            ? (kept.Average(), Math.Sqrt(SquaresAbout(kept.Average(), kept) / (kept.Length - 1) / kept.Length))
            : null;
    }

    static double SquaresAbout(double mean, double[] values) => values.Sum(v => (v - mean) * (v - mean));
}
