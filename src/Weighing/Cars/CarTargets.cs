namespace ScaleLink.Weighing.Cars;

/// <summary>Where the crew wants the car to stand, and how near is near enough.</summary>
sealed record CarTargets
{
    /// <summary>Tolerance of cross weight where nobody stated one, percent. Common practice, no published source.</summary>
    public const double UsualTolerancePercent = 0.2;

    /// <summary>(RF + LR) / total, percent.</summary>
    public double CrossWeightPercent { get; init; } = 50;

    /// <summary>Allowed either way, percent.</summary>
    public double CrossWeightTolerancePercent { get; init; } = UsualTolerancePercent;

    /// <summary>Ride heights, mm. Null: keep the heights that the car has.</summary>
    public Corners? RideHeightsMm { get; init; }

    /// <summary>Rear minus front ride height, mm, when no four heights are given. Null: keep it.</summary>
    public double? RakeMm { get; init; }

    /// <summary>Left minus right ride height, mm, when no four heights are given. Null: keep it.</summary>
    public double? LeftRightDifferenceMm { get; init; }

    /// <summary>Allowed either way for mean ride height, rake and left-right height difference, mm.</summary>
    public double RideHeightToleranceMm { get; init; } = 1;

    /// <summary>Allowed either way for rake, mm, where rake is measured. Null: as for the other heights.</summary>
    public double? RakeToleranceMm { get; init; }

    /// <summary>What a miss of rake counts against the same miss of another height.</summary>
    public double RakeWeight => RakeToleranceMm is { } own ? RideHeightToleranceMm / own : 1;
}
