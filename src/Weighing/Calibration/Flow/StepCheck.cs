namespace ScaleLink.Weighing.Calibration;

/// <summary>Whether a reading looks like the load that its step asks for, by the calibration in force.</summary>
static class StepCheck
{
    const double KgPerLb = 0.45359237;

    // A pad that moves by less than this share of what was to come has not been loaded.
    const double Unmoved = 0.2;

    public static Refusal? Of(ProofPlan plan, TakenReading now, TakenReading? previous, double? emptyCounts)
    {
        var counts = plan.Before.Counts([.. now.Reading.CellCounts]);
        if (emptyCounts is { } empty && plan.Before.Kg(counts - empty) is var kg && kg > plan.Before.CapacityKg)
            return CalibrationRefusals.BeyondCapacity.Because($"about {kg:0} kg of {plan.Before.CapacityKg:0.#} kg");
        if (previous is null || !previous.Step.Load.Ballast.SequenceEqual(now.Step.Load.Ballast))
            return null;

        var expected = plan.Masses.Kg(now.Step.Load) - plan.Masses.Kg(previous.Step.Load);
        if (Math.Abs(expected) < plan.Limits.SmallChangeKg)
            return null;
        var change = plan.Before.Kg(counts - plan.Before.Counts([.. previous.Reading.CellCounts]));
        var ratio = change / expected;
        return ratio switch
        {
            > -Unmoved and < Unmoved => Elsewhere(plan.Corner, now.Reading, previous.Reading, expected)
                ?? CalibrationRefusals.Duplicate.Because($"{expected:+0.#;-0.#} kg was to come, {change:+0.0;-0.0} kg came"),
            < 0 => CalibrationRefusals.NotMonotonic.Because($"{expected:+0.#;-0.#} kg was to come, {change:+0.0;-0.0} kg came"),
            _ when Near(ratio, KgPerLb) || Near(ratio, 1 / KgPerLb) => CalibrationRefusals.WrongUnit.Because(
                $"{expected:+0.#;-0.#} kg was to come, {change:+0.0;-0.0} kg came, {(ratio < 1 ? "as if marked in pounds" : "as if converted from pounds twice")}"),
            _ when Math.Abs(ratio - 1) > plan.Limits.LoadShare => CalibrationRefusals.UnexpectedLoad.Because(
                $"{expected:+0.#;-0.#} kg was to come, about {change:+0.0;-0.0} kg came"),
            _ => null,
        };
    }

    static Refusal? Elsewhere(Corner own, PadReading now, PadReading previous, double expected)
    {
        if (now.BayLoadsKg is not { } loads || previous.BayLoadsKg is not { } before)
            return null;
        var changes = loads - before;
        foreach (var corner in Corners.All)
            if (corner != own && Math.Abs(changes[corner] / expected - 1) < 0.5)
                return CalibrationRefusals.WrongPad.Because($"{changes[corner]:+0.0;-0.0} kg came on {corner}, the proof is of {own}");
        return null;
    }

    static bool Near(double ratio, double expected) => Math.Abs(ratio / expected - 1) < 0.1;
}
