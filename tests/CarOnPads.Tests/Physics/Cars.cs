using CarOnPads.Physics;

namespace CarOnPads.Tests.Physics;

/// <summary>Cars simple enough for a closed form, and the demo car.</summary>
static class Cars
{
    public const double G = 9.81;

    static readonly CarDescription s_heron = CarFile.Heron();

    static readonly AxleDescription s_axle = s_heron.Front with { TrackM = 1.5, BarNPerMm = 0 };

    /// <summary>A rectangle with four equal corners, its mass in the middle, no driver, no bars, no warp.</summary>
    public static CarDescription Square { get; } = s_heron with
    {
        WheelbaseM = 2.4,
        MassKg = 1000,
        FrontWeight = 0.5,
        LeftSideWeight = 0.5,
        CgHeightM = 0,
        Driver = new PlacedMass(0, 0, 0, 0),
        Front = s_axle,
        Rear = s_axle,
        WarpMm = new CornerValues(0, 0, 0, 0),
    };

    /// <summary>
    /// The square car with hardly any unsprung mass, so that nothing leans, and a stiffer rear: for statics only, its
    /// wheels are too light for the dynamics' step.
    /// </summary>
    public static CarDescription Massless { get; } = Square with
    {
        Front = s_axle with { UnsprungKg = 1e-6 },
        Rear = s_axle with { UnsprungKg = 1e-6, SpringNPerMm = 95, TyreNPerMm = 180 },
    };

    public static CarDescription Heron => s_heron;

    /// <summary>Spring and tyre in series, N/m.</summary>
    public static double RideRate(WheelStation at) => 1 / (1 / at.WheelRate + 1 / at.TyreRate);

    public static Four Kilograms(in Motion motion) => motion.Load.Times(1 / G);

    public static void Run(Rig rig, double seconds)
    {
        for (var steps = (int)Math.Round(seconds / CarDynamics.Step); steps > 0; steps--)
            rig.Advance();
    }

    public static double CrossWeight(in Motion motion) =>
        100 * (motion.Load[Wheel.RF] + motion.Load[Wheel.LR]) / motion.Load.Sum;
}
