using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration.Results;

/// <summary>Outcome of holding a calibration procedure against a class.</summary>
enum GradeOutcome
{
    /// <summary>Every point lies inside the limits.</summary>
    Inside,
    /// <summary>At least one point lies outside.</summary>
    Outside,
    /// <summary>The masses are too coarse to tell, or the class ends before the load.</summary>
    NotGraded,
}

/// <summary>One point against its limit.</summary>
/// <param name="What">What was compared: "error", "repeatability".</param>
/// <param name="LoadKg">Load.</param>
/// <param name="FoundKg">Found.</param>
/// <param name="LimitKg">Limit either way.</param>
readonly record struct GradedPoint(string What, double LoadKg, double FoundKg, double LimitKg);

/// <summary>
/// A calibration procedure held against the limits of OIML R 76-1:2006 class III, for comparison. It is no verification: this equipment
/// is not approved for trade.
/// </summary>
/// <param name="Outcome">Inside, outside, not graded.</param>
/// <param name="IntervalKg">Interval e that the limits were taken for.</param>
/// <param name="UpToKg">Highest load of the calibration procedure.</param>
/// <param name="Worst">The point nearest to its limit, or furthest beyond; null when not graded.</param>
/// <param name="Reason">Why it was not graded; empty otherwise.</param>
sealed record ClassGrade(GradeOutcome Outcome, double IntervalKg, double UpToKg, GradedPoint? Worst, Sentence Reason)
{
    /// <summary>The usual accuracy class for a car's corner, kg.</summary>
    public const double UsualIntervalKg = 0.2;

    /// <summary>Holds the levels of a calibration procedure against class III.</summary>
    public static ClassGrade Of(PadCharacteristics pad, MassSet masses, double intervalKg = UsualIntervalKg)
    {
        ArgumentNullException.ThrowIfNull(pad);
        ArgumentNullException.ThrowIfNull(masses);
        var upTo = pad.Levels.Max(l => l.Kg);
        ClassGrade NotGraded(Sentence reason) => new(GradeOutcome.NotGraded, intervalKg, upTo, null, reason);

        List<GradedPoint> points = [];
        foreach (var level in pad.Levels.Where(l => !l.Load.IsEmpty))
        {
            if (ErrorLimits.Kg(AccuracyClass.III, level.Kg, intervalKg) is not { } limit)
                return NotGraded($"class III ends below {Kg(level.Kg):0.#} for e = {Kg(intervalKg)}");
            var tolerance = masses.ToleranceKg(level.Load);
            if (tolerance > limit * ErrorLimits.MassesShare)
                return NotGraded($"at {Kg(level.Kg):0.#} the masses may be {Kg(tolerance):0.###} off, more than a third of the limit of {Kg(limit):0.###}");
            points.Add(new GradedPoint("error", level.Kg, level.WorstErrorKg, limit));
            if (level.SpreadKg is { } spread)
                points.Add(new GradedPoint("repeatability", level.Kg, spread, limit));
        }
        var worst = points.MaxBy(p => Math.Abs(p.FoundKg) / p.LimitKg);
        var inside = Math.Abs(worst.FoundKg) <= worst.LimitKg;
        return new ClassGrade(inside ? GradeOutcome.Inside : GradeOutcome.Outside, intervalKg, upTo, worst, "");
    }

    /// <summary>For people.</summary>
    public Sentence Words => Worst is { } worst
        ? (Sentence)($"inside class III limits for e = {Kg(IntervalKg):0.###} up to {Kg(UpToKg):0.#}: {(Outcome == GradeOutcome.Inside ? "yes" : "no")}, "
            + $"worst point {worst.What} {Kg(worst.FoundKg):+0.000}, limit {Kg(worst.LimitKg):0.000} either way, at {Kg(worst.LoadKg):0.#}")
        : (Sentence)$"class III limits for e = {Kg(IntervalKg):0.###}: not graded, {Reason}";

    /// <inheritdoc/>
    public override string ToString() => Words;
}
