namespace ScaleLink.Weighing.Cars.Interview;

/// <summary>What is asked of a car, in the order in which a crew finds the answers, and the car that they make.</summary>
internal static class CarQuestions
{
    private const double UsualLengthMm = 3, AnyWheelbaseMm = 2500, AnyTrackMm = 1500;

    public static IReadOnlyList<CarQuestion> All { get; } =
    [
        new("name", "Name of the car", AnswerKind.Text),
        new("wheelbase", "Wheelbase", AnswerKind.Length, UsualMm: UsualLengthMm),
        new("front track", "Front track", AnswerKind.Length, UsualMm: UsualLengthMm),
        new("rear track", "Rear track", AnswerKind.Length, UsualMm: UsualLengthMm),
        .. Axle("front"), .. Axle("rear"),
        new("cg height", "Height of the centre of gravity with driver", AnswerKind.Length, 0.06, Otherwise: Stated.Guess(450, 100)),
        new("smallest turn", "Smallest turn that the lock ring holds: 0.125, 0.25 or 0.5", AnswerKind.Number, Otherwise: Stated.Exactly(0.25)),
        new("target", "Target for cross weight (RF + LR) / total", AnswerKind.Percent, Otherwise: Stated.Exactly(50)),
    ];

    /// <summary>The car of the answers that there are; anything usable stands for those that there are not.</summary>
    public static CarModel Car(string name, IReadOnlyDictionary<string, Stated> answers)
    {
        var (front, rear) = (Corner("front"), Corner("rear"));
        return new CarModel
        {
            Name = name.Length > 0 ? name : "?", WheelbaseMm = Of("wheelbase", AnyWheelbaseMm), FrontTrackMm = Of("front track", AnyTrackMm), RearTrackMm = Of("rear track", AnyTrackMm),
            Suspension = new(front, front, rear, rear), FrontBar = Bar("front"), RearBar = Bar("rear"), CgHeightMm = Of("cg height"),
            SmallestTurn = Of("smallest turn").Estimate, Targets = new() { CrossWeightPercent = Of("target").Estimate },
        }.WithUsualSharedUncertainties();

        Stated Of(string key, double any = 0) => answers.TryGetValue(key, out var answer) ? answer : All.First(q => q.Key == key).Otherwise ?? Stated.Exactly(any);

        CornerSetup Corner(string axle) => new()
        {
            SpringRateNPerMm = Of($"{axle} spring"), MotionRatio = Of($"{axle} motion ratio"), TyreRateNPerMm = Of($"{axle} tyre"),
            Perch = new() { PitchMmPerTurn = Of($"{axle} pitch"), UpTurnsLeft = Of($"{axle} up").Estimate, DownTurnsLeft = Of($"{axle} down").Estimate },
        };

        AntiRollBar? Bar(string axle) => Of($"{axle} bar") is { Estimate: not 0 } bar ? new(bar, Connected: true) : null;
    }

    private static IEnumerable<CarQuestion> Axle(string axle)
    {
        var name = $"{char.ToUpperInvariant(axle[0])}{axle[1..]}";
        return
        [
            new($"{axle} spring", $"{name} spring rate", AnswerKind.Rate, 0.05, Otherwise: Stated.Guess(60, 25)),
            new($"{axle} motion ratio", $"{name} motion ratio", AnswerKind.Number, 0.025, Otherwise: Stated.Guess(0.85, 0.2)),
            new($"{axle} tyre", $"{name} tyre rate", AnswerKind.Rate, 0.1, Otherwise: Stated.Guess(220, 60)),
            new($"{axle} pitch", $"{name} perch travel for one turn", AnswerKind.Length, 0.005, Otherwise: Stated.Guess(2, 0.5)),
            new($"{axle} up", $"{name} thread left upwards, turns", AnswerKind.Number, Otherwise: Stated.Exactly(4)),
            new($"{axle} down", $"{name} thread left downwards, turns", AnswerKind.Number, Otherwise: Stated.Exactly(4)),
            new($"{axle} bar", $"{name} anti-roll bar at the wheel, 0 for none", AnswerKind.Rate, 0.15, Otherwise: Stated.Exactly(0)),
        ];
    }
}
