using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.InclinometerZeros;

/// <summary>
/// A reversal test of the inclinometer in a pad: read, turn the pad by half a turn about the vertical, read, and both again. Turning
/// takes the ground's tilt to the other side about both axes at once; what stays is the zero. Common practice, no published source.
/// </summary>
/// <param name="Readings">So far, oldest first: as it lay, turned, and again.</param>
sealed record InclinometerTest(IReadOnlyList<TiltReading> Readings)
{
    /// <summary>Readings of a whole test: two pairs, so that they check each other.</summary>
    public const int Needed = 4;

    /// <summary>
    /// One standard uncertainty by which a pad lies otherwise after it was put back onto the same marks, degrees: near 0.1 mm under one
    /// edge of a pad of 0.3 to 0.4 m. Common practice, no published source.
    /// </summary>
    public const double SeatingDeg = 0.02;

    /// <summary>A zero beyond this about either axis is no mounting error any more, degrees. Common practice, no published source.</summary>
    public const double LargestZeroDeg = 1.0;

    /// <summary>Two readings nearer to each other than this about both axes may be of a pad that nobody turned, degrees.</summary>
    public static double SameDeg { get; } = 3.5 * Math.Sqrt(2) * SeatingDeg;

    /// <summary>Nothing read yet.</summary>
    public InclinometerTest() : this([]) { }

    /// <summary>Number of the reading that comes next, from 1.</summary>
    [JsonIgnore]
    public int NextNumber => Readings.Count + 1;

    /// <summary>The next reading is of the pad the other way round than at first.</summary>
    [JsonIgnore]
    public bool NextIsTurned => Readings.Count % 2 == 1;

    [JsonIgnore]
    bool SawATurn => Readings.Count > 1 && !IsSame(Readings[0], Readings[1]);

    /// <summary>This with one more reading, judged by <see cref="WhyNot"/> before.</summary>
    public InclinometerTest With(TiltReading reading) => new([.. Readings, reading]);

    /// <summary>
    /// Why this reading cannot be the next one; nothing when it can. A pad that reads the same after turning was not turned, or stands on
    /// ground that is level: the angles alone cannot tell, so the crew has to say. Where an earlier turn was seen, this one has to be.
    /// </summary>
    public Diagnostic? WhyNot(TiltReading next)
    {
        ArgumentNullException.ThrowIfNull(next);
        if (Readings.Count == 0 || !IsSame(Readings[^1], next))
            return null;
        if (SawATurn)
            return new(InclinometerCodes.NotTurned, $"The pad reads the same as before ({Words(next)}), and the first turn changed it by {Change(Readings[0], Readings[1]):0.00} degrees: it was not turned, or lies on other marks.",
                "Turn it by half a turn onto the same marks, then read again.");
        // Ground that was said to be level once is level: turned or not is the same there.
        return next.SaidTurned || Readings.Any(r => r.SaidTurned) ? null : new(InclinometerCodes.TurnNotSeen, $"The pad reads the same as before ({Words(next)}): either it was not turned, or it stands on level ground. The angles cannot tell which.",
            "Turn it by half a turn and read again. If it was turned, the ground is level there: say so and read again.");
    }

    /// <summary>The zero by all readings, or why there is none.</summary>
    public (InclinometerZero? Zero, Diagnostic? Refused) Outcome()
    {
        if (Readings.Count < Needed)
            return (null, new(InclinometerCodes.OutOfStep, $"{Readings.Count} of {Needed} readings are taken.", "Read the pad both ways twice."));
        var own = Math.Sqrt(SeatingDeg * SeatingDeg + Readings.Average(r => r.RepeatabilityDeg * r.RepeatabilityDeg));
        try
        {
            var (pitch, roll) = (Axis(r => r.PitchDeg, own), Axis(r => r.RollDeg, own));
            var zero = new InclinometerZero(pitch.ZeroDeg, roll.ZeroDeg, Math.Max(pitch.StandardUncertaintyDeg, roll.StandardUncertaintyDeg), pitch.TiltDeg, roll.TiltDeg);
            return Math.Max(Math.Abs(zero.PitchDeg), Math.Abs(zero.RollDeg)) <= LargestZeroDeg ? (zero, null) : (null, TooLarge(zero));
        }
        catch (DiagnosticException e)
        {
            return (null, e.Diagnostics[0]);
        }
    }

    // Pairs that vary more than the readings are good to, though not enough to be refused, count as they vary.
    ReversalTest Axis(Func<TiltReading, double> angle, double own)
    {
        List<(double Reading, double Turned)> pairs = [.. Readings.Chunk(2).Select(p => (angle(p[0]), angle(p[1])))];
        var test = ReversalTest.Of(pairs, own);
        var repeatability = Math.Sqrt(pairs.Sum(p => Math.Pow((p.Reading + p.Turned) / 2 - test.ZeroDeg, 2)) / (pairs.Count - 1) / pairs.Count);
        return test with { StandardUncertaintyDeg = Math.Max(test.StandardUncertaintyDeg, repeatability) };
    }

    static Diagnostic TooLarge(InclinometerZero zero) => new(InclinometerCodes.ZeroTooLarge, $"The zero came out at pitch {zero.PitchDeg:+0.00;-0.00} and roll {zero.RollDeg:+0.00;-0.00} degrees: more than a mounting error of {LargestZeroDeg:0.#} degree.",
        "See that the pad was turned by half a turn each time and that its inclinometer sits fast; then begin anew.");

    static bool IsSame(TiltReading a, TiltReading b) => Change(a, b) < SameDeg;

    static double Change(TiltReading a, TiltReading b) => Math.Max(Math.Abs(a.PitchDeg - b.PitchDeg), Math.Abs(a.RollDeg - b.RollDeg));

    static string Words(TiltReading r) => $"pitch {r.PitchDeg:+0.00;-0.00;0.00}, roll {r.RollDeg:+0.00;-0.00;0.00} degrees";
}
