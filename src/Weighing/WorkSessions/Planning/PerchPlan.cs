namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>What to turn next and what it should do.</summary>
sealed record PerchPlan
{
    /// <summary>Turns of each perch, up positive, in whole numbers of the smallest turn.</summary>
    public required Corners Turns { get; init; }

    /// <summary>What the best turns would be without rounding and limits.</summary>
    public required Corners UnroundedTurns { get; init; }

    /// <summary>Misses as the car stands.</summary>
    public required PlanMisses Now { get; init; }

    /// <summary>Misses expected after the turns.</summary>
    public required PlanMisses After { get; init; }

    /// <summary>Value of <see cref="PlanObjective"/>.</summary>
    public required double Objective { get; init; }

    /// <summary>True when all misses are within tolerance already, and nothing is turned.</summary>
    public required bool AlreadyThere { get; init; }

    /// <summary>True when the turns are expected to bring everything within tolerance.</summary>
    public required bool Reaches { get; init; }

    /// <summary>Drawn before the crew turns.</summary>
    public required PlanForecast Forecast { get; init; }

    /// <summary>What stands in the way, or uncertain. Empty: nothing.</summary>
    public IReadOnlyList<Diagnostic> Findings { get; init; } = [];

    /// <summary>Other ways when the targets are out of reach.</summary>
    public IReadOnlyList<PlanAlternative> Alternatives { get; init; } = [];

    /// <summary>For the crew, for example "LR up 1¼ turns, RF up ¾: then settle".</summary>
    public string Words => CrewWords.Say(Turns);
}
