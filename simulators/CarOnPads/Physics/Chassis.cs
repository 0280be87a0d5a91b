namespace CarOnPads.Physics;

/// <summary>
/// What the file fixes about the car, in SI units and ready for the equations. Heights are departures from the
/// design position: the car with its driver on a perfect flat patch, no warp in it and the bars idle.
/// </summary>
sealed class Chassis
{
    /// <summary>Height of the wheel centres, where the unsprung masses lean when the car does.</summary>
    const double WheelRadius = 0.29;

    readonly WheelStation[] _stations;

    /// <summary>Derives the constants. <paramref name="gravity"/> in m/s².</summary>
    public Chassis(CarDescription car, double gravity)
    {
        Description = car;
        Gravity = gravity;
        var reference = DesignLoads(car, gravity);
        _stations = [.. Enum.GetValues<Wheel>().Select(w => WheelStation.From(car, w, reference[w], gravity))];
        Warp = car.WarpMm.ToFour().Times(1e-3);
        FrontBar = car.Front.BarNPerMm * 1e3;
        RearBar = car.Rear.BarNPerMm * 1e3;
        UnsprungHeightMoment = _stations.Sum(s => s.UnsprungMass) * WheelRadius;
    }

    /// <summary>The file's own words.</summary>
    public CarDescription Description { get; }
    /// <summary>Local gravity, m/s².</summary>
    public double Gravity { get; }
    /// <summary>Free-length differences at the wheels, m.</summary>
    public Four Warp { get; }
    /// <summary>Front anti-roll bar at the wheels, N/m of difference.</summary>
    public double FrontBar { get; }
    /// <summary>Rear anti-roll bar at the wheels, N/m of difference.</summary>
    public double RearBar { get; }
    /// <summary>Front bar's idle difference, m.</summary>
    public double FrontBarIdle => Description.Front.BarPreloadMm * 1e-3;
    /// <summary>Rear bar's idle difference, m.</summary>
    public double RearBarIdle => Description.Rear.BarPreloadMm * 1e-3;
    /// <summary>Sum of unsprung mass times height, kg m.</summary>
    public double UnsprungHeightMoment { get; }
    /// <summary>The four stations in the order of <see cref="Wheel"/>.</summary>
    public ReadOnlySpan<WheelStation> Stations => _stations;

    /// <summary>Loads in N that the masses alone dictate when each axle carries its sides in the same proportion.</summary>
    static Four DesignLoads(CarDescription car, double gravity)
    {
        var total = car.MassKg + car.Driver.Kg;
        var x = (car.MassKg * (car.FrontWeight - 0.5) * car.WheelbaseM + car.Driver.Kg * car.Driver.XM) / total;
        var front = 0.5 + x / car.WheelbaseM;
        var ownArm = MeanTrack(car, car.FrontWeight) * (car.LeftSideWeight - 0.5);
        var y = (car.MassKg * ownArm + car.Driver.Kg * car.Driver.YM) / total;
        var left = 0.5 + y / MeanTrack(car, front);
        var weight = total * gravity;
        return Four.Of(
            weight * front * left, weight * front * (1 - left),
            weight * (1 - front) * left, weight * (1 - front) * (1 - left));
    }

    internal static double MeanTrack(CarDescription car, double frontWeight) =>
        frontWeight * car.Front.TrackM + (1 - frontWeight) * car.Rear.TrackM;
}
