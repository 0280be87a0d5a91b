namespace ScaleLink.Weighing.Pads;

/// <summary>
/// What a calibration procedure, or the cells' data sheet, says of a pad beyond its curve. Null: not tested and not stated, and so not
/// covered by the uncertainty.
/// </summary>
sealed record ErrorSources
{
    /// <summary>Step of the indication, counts; rounding happens at zero and at the load.</summary>
    public double ResolutionCounts { get; init; }

    /// <summary>Limit of the relative error by buoyancy of air.</summary>
    public double BuoyancyRelative { get; init; }

    /// <summary>Largest departure of the empty pad after a run from before it, kg.</summary>
    public double? ZeroReturnKg { get; init; }

    /// <summary>Largest difference between the way down and the way up, kg.</summary>
    public double? HysteresisKg { get; init; }

    /// <summary>From this load on the whole of it is taken, kg; below it hysteresis is taken in proportion.</summary>
    public double HysteresisAtKg { get; init; }

    /// <summary>True when the curve was drawn through the way up alone, so that the way down is off by all of it.</summary>
    public bool CurveFollowsWayUp { get; init; }

    /// <summary>Standard deviation of one placing of the same load, kg.</summary>
    public double? RepeatabilitySdKg { get; init; }

    /// <summary>Degrees of freedom of the repeatability.</summary>
    public double RepeatabilityDegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>Change within 30 minutes under load, relative to the load.</summary>
    public double? CreepRelative { get; init; }

    /// <summary>Largest departure from the chosen curve that the calibration procedure does not rule out, kg.</summary>
    public double? LinearityKg { get; init; }

    /// <summary>Largest remaining difference between places on the pad, relative to the load.</summary>
    public double? PositionRelative { get; init; }

    /// <summary>Change of span per kelvin, relative, either way; from the data sheet.</summary>
    public double? SpanPerKelvin { get; init; }

    /// <summary>Names of the sources that nothing is known of.</summary>
    public IReadOnlyList<string> NotCovered() =>
    [
        .. new (string Name, double? Known)[]
        {
            (BudgetTerms.ZeroReturn, ZeroReturnKg), (BudgetTerms.Hysteresis, HysteresisKg), (BudgetTerms.Linearity, LinearityKg),
            (BudgetTerms.Repeatability, RepeatabilitySdKg),
            (BudgetTerms.Creep, CreepRelative), (BudgetTerms.Position, PositionRelative), (BudgetTerms.Temperature, SpanPerKelvin),
        }.Where(source => source.Known is null).Select(source => source.Name),
    ];
}
