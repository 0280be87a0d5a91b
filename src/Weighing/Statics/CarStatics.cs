using ScaleLink.Weighing.Cars;

namespace ScaleLink.Weighing.Statics;

/// <summary>
/// The equilibrium of a car on four pads. Total and two moments give three equations for four loads; the fourth is that the
/// body stays a plane: the pattern orthogonal to planes, applied to (pad heights + perch lifts - compressions), does not
/// change. One 4x4 solve answers what a pad height, a slope, a turn or a mass does to the loads.
/// <para>
/// Small angles, springs and tyres linear, wheels upright. When the body leans on its springs the centre of gravity swings
/// about the roll axis and takes moment with it; that is in the equations, and matters when ride heights are changed.
/// </para>
/// </summary>
sealed class CarStatics
{
    /// <summary>Standard gravity, m/s²: exact by definition (3rd CGPM, 1901).</summary>
    public const double StandardGravity = 9.80665;

    readonly CornerMatrix solve;
    readonly double cgHeight, swing;

    /// <summary>Sets the equations up.</summary>
    /// <param name="car">A car model.</param>
    /// <param name="totalKg">Mass on the pads, kg.</param>
    /// <param name="gravity">Local gravity, m/s²; half a percent of it changes a rate by half a percent.</param>
    /// <exception cref="DiagnosticException">The model has mistakes, or the mass is not positive.</exception>
    public CarStatics(CarModel car, double totalKg, double gravity = StandardGravity)
        : this(totalKg is > 0 and < 100_000 ? totalKg : throw new DiagnosticException(
            new Diagnostic(CarCodes.Loads, $"The total is {Kg(totalKg)}.", "Weigh the car on all four pads first.")), gravity, car.Checked())
    {
    }

    CarStatics(double totalKg, double gravity, CarModel car)
    {
        Car = car;
        TotalKg = totalKg;
        Gravity = gravity;
        Contacts = Contacts.Of(car);
        Warp = Contacts.WarpPattern;
        Compliance = Compliance.Of(car, gravity);
        cgHeight = car.CgHeightMm.Estimate;
        swing = totalKg * (cgHeight - car.RollAxisHeightMm.Estimate);
        var bodySlopeX = Compliance.MmPerKg.Transposed * Contacts.SlopeAlongX;
        var bodySlopeY = Compliance.MmPerKg.Transposed * Contacts.SlopeAlongY;
        WarpPerLoad = Compliance.MmPerKg.Transposed * Warp;
        solve = new CornerMatrix(Corners.Same(1), Contacts.X - swing * bodySlopeX, Contacts.Y - swing * bodySlopeY, WarpPerLoad).Inverse();
    }

    /// <summary>The model behind it.</summary>
    public CarModel Car { get; }

    /// <summary>Mass on the pads, kg.</summary>
    public double TotalKg { get; }

    /// <summary>Local gravity, m/s².</summary>
    public double Gravity { get; }

    /// <summary>Where the tyres stand.</summary>
    public Contacts Contacts { get; }

    /// <summary>Springs, bars and tyres.</summary>
    public Compliance Compliance { get; }

    /// <summary>The pattern of loads that statics alone cannot tell; see <see cref="Contacts.WarpPattern"/>.</summary>
    public Corners Warp { get; }

    /// <summary>
    /// Warp per load, mm/kg. Its product with the four loads stays the same while the car heaves, pitches, rolls or carries
    /// mass about, and changes only with perches, pad heights and what is built in.
    /// </summary>
    public Corners WarpPerLoad { get; }

    /// <summary>Covariance of <see cref="WarpPerLoad"/> by the uncertainties of the car model, mm²/kg².</summary>
    public CornerMatrix WarpPerLoadCovariance() => ModelUncertainty.Of(Car)
        .Select(d => d.PerStep / 2 * (WithUncertainty(d.Upper).WarpPerLoad - WithUncertainty(d.Lower).WarpPerLoad))
        .Aggregate(default(CornerMatrix), (sum, half) => sum + CornerMatrix.Outer(half, half));

    /// <summary>Change of load (row, kg) for one turn of a perch (column).</summary>
    public CornerMatrix LoadsPerTurn => CornerMatrix.FromColumns(c => FromLift(Compliance.LiftMmPerTurn.Column(c)));

    /// <summary>Change of the body's height above the pad (row, mm) for one turn of a perch (column).</summary>
    public CornerMatrix HeightsPerTurn => Compliance.LiftMmPerTurn - Compliance.MmPerKg * LoadsPerTurn;

    /// <summary>Change of load (row, kg) when one pad (column) is raised by one mm, slope and warp together.</summary>
    public CornerMatrix LoadsPerPadHeight => CornerMatrix.FromColumns(c => FromPads(default(Corners).With(c, 1)));

    /// <summary>Change of the four loads, kg, for pads that stand at these heights, mm, instead of level.</summary>
    public Corners FromPads(in Corners heightsMm) => FromSlope(heightsMm) + FromWarp(heightsMm);

    /// <summary>The part of <see cref="FromPads"/> that comes from the slope of the plane through the pads.</summary>
    public Corners FromSlope(in Corners heightsMm) => solve * new Corners(0,
        -TotalKg * cgHeight * Contacts.SlopeAlongX.Dot(heightsMm), -TotalKg * cgHeight * Contacts.SlopeAlongY.Dot(heightsMm), 0);

    /// <summary>The part of <see cref="FromPads"/> that comes from what no plane explains.</summary>
    public Corners FromWarp(in Corners heightsMm) => FromBuiltInWarp(Warp.Dot(heightsMm));

    /// <summary>Change of the four loads, kg, for so many mm more of built-in warp.</summary>
    public Corners FromBuiltInWarp(double mm) => solve * new Corners(0, 0, 0, mm);

    /// <summary>Change of the four loads, kg, for these turns of the perches.</summary>
    public Corners FromTurns(in Corners turns) => FromLift(Compliance.LiftMmPerTurn * turns);

    /// <summary>Change of the body's height above each pad, mm, for these turns of the perches.</summary>
    public Corners HeightsFromTurns(in Corners turns) => Compliance.LiftMmPerTurn * turns - Compliance.MmPerKg * FromTurns(turns);

    /// <summary>Change of the four loads, kg, when this mass is put in that place (negative: taken out).</summary>
    public Corners FromMass(double kg, Place place) => kg * (solve * new Corners(1, place.X, place.Y, 0));

    /// <summary>The four loads, kg, of that car on pads at these heights, mm, after these turns.</summary>
    public Corners Loads(in Stance stance, in Corners padHeightsMm = default, in Corners turns = default) =>
        Level(stance) + FromPads(padHeightsMm) + FromTurns(turns);

    /// <summary>What car stands behind four loads measured on pads at these heights: the inverse of <see cref="Loads"/>.</summary>
    public Stance StanceBehind(in Corners loads, in Corners padHeightsMm = default)
    {
        var level = loads - FromPads(padHeightsMm);
        return new(level.Sum, Contacts.X.Dot(level) / level.Sum, Contacts.Y.Dot(level) / level.Sum, WarpPerLoad.Dot(level));
    }

    /// <summary>The same question about a car at the edge of somebody's uncertainty, which nobody stated: not checked.</summary>
    internal CarStatics WithUncertainty(CarModel car) => new(TotalKg, Gravity, car);

    // The centre of gravity is stated for the car as it stands, so nothing has swung yet.
    Corners Level(in Stance stance) => new CornerMatrix(Corners.Same(1), Contacts.X, Contacts.Y, WarpPerLoad).Inverse()
        * new Corners(stance.TotalKg, stance.TotalKg * stance.CgX, stance.TotalKg * stance.CgY, stance.BuiltInWarpMm);

    Corners FromLift(in Corners liftMm) => solve * new Corners(0,
        -swing * Contacts.SlopeAlongX.Dot(liftMm), -swing * Contacts.SlopeAlongY.Dot(liftMm), Warp.Dot(liftMm));
}
