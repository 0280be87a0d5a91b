using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Weighing.Cars;

/// <summary>What the crew knows about a car: enough to say what each turn of a perch will do.</summary>
sealed record CarModel
{
    /// <summary>As the crew calls it.</summary>
    public required string Name { get; init; }

    /// <summary>Front axle to rear axle, mm.</summary>
    public required Stated WheelbaseMm { get; init; }

    /// <summary>Between the centres of the front contact patches, mm.</summary>
    public required Stated FrontTrackMm { get; init; }

    /// <summary>Between the centres of the rear contact patches, mm.</summary>
    public required Stated RearTrackMm { get; init; }

    /// <summary>Springs, tyres and perches.</summary>
    public required PerCorner<CornerSetup> Suspension { get; init; }

    /// <summary>Null: the axle has none.</summary>
    public AntiRollBar? FrontBar { get; init; }

    /// <summary>Null: the axle has none.</summary>
    public AntiRollBar? RearBar { get; init; }

    /// <summary>Height of the centre of gravity above the ground, mm.</summary>
    public required Stated CgHeightMm { get; init; }

    /// <summary>
    /// Height of the axes about which the body rolls and pitches on its suspension, mm. The centre of gravity swings about
    /// them when the body leans, and takes load with it. Usually near the ground.
    /// </summary>
    public Stated RollAxisHeightMm { get; init; } = Stated.Guess(50, 50);

    /// <summary>
    /// Uncertainty that all spring rates share, as a share of one: the same gauge, the same catalogue, the same batch.
    /// The uncertainty of each spring on its own stands with the spring.
    /// </summary>
    public double SharedSpringUncertainty { get; init; }

    /// <summary>Uncertainty that all tyre rates share, as a share of one: the same pressure gauge, the same table.</summary>
    public double SharedTyreUncertainty { get; init; }

    /// <summary>The smallest turn that the crew can set and the lock ring holds: 1/8, 1/4 or 1/2.</summary>
    public double SmallestTurn { get; init; } = 0.25;

    /// <summary>Places for ballast.</summary>
    public IReadOnlyList<BallastStation> BallastStations { get; init; } = [];

    /// <summary>Where ride heights are measured; heights do not matter. Null: at the wheels.</summary>
    public PerCorner<Place>? RideHeightMarks { get; init; }

    /// <summary>Null: not stated; the tank is taken as it is weighed.</summary>
    public FuelTank? Fuel { get; init; }

    /// <summary>Who races it. Empty: whoever is in it as it is weighed.</summary>
    public IReadOnlyList<Driver> Drivers { get; init; } = [];

    /// <summary>Null: not stated, or the class has none.</summary>
    public ClassRule? Class { get; init; }

    /// <summary>Where the car should stand.</summary>
    public CarTargets Targets { get; init; } = new();

    /// <summary>What else the file says of its setup. Plans go by the numbers above; the two agree.</summary>
    public SheetContent Setup { get; init; } = SheetContent.Empty;

    /// <summary>This with one corner changed.</summary>
    public CarModel Change(Corner corner, Func<CornerSetup, CornerSetup> change) =>
        this with { Suspension = Suspension.Change(corner, change) };

    /// <summary>This with both bars, where fitted, connected or not.</summary>
    public CarModel WithBars(bool connected) => this with
    {
        FrontBar = FrontBar is { } front ? front with { Connected = connected } : null,
        RearBar = RearBar is { } rear ? rear with { Connected = connected } : null,
    };

    /// <summary>This with the uncertainties that rates usually share, for a crew that states none: as large as each rate's own.</summary>
    public CarModel WithUsualSharedUncertainties() => this with
    {
        SharedSpringUncertainty = SharedUncertainty.Of(Suspension, s => s.SpringRateNPerMm),
        SharedTyreUncertainty = SharedUncertainty.Of(Suspension, s => s.TyreRateNPerMm),
    };

    /// <summary>What nobody knows and only a wide guess stands for, in words. Empty: everything is stated.</summary>
    public IReadOnlyList<string> Guesses() => [.. NamedValues.Of(this).Where(v => v.Value.Assumed).Select(v => v.Name)];
}
