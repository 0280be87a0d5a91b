using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Pads;

/// <summary>Each term worked by hand: JCGM 100:2008 (GUM) 4.3.7, F.2.2.1, G.4.1.</summary>
public class CalibrationBudgetTests
{
    static readonly Place Shop = Place.On("workshop", 52, 80);

    static readonly PadCalibration Pad = PadCalibration.Starting("P7", 0.002, 0.01, 450, 1, Shop, DateTimeOffset.UnixEpoch) with
    {
        Standing = CalibrationStanding.Calibrated,
        Repeatability = new CurveCovariance(1e-14, 0, 0),
        RepeatabilityDegreesOfFreedom = 8,
        MassesTogether = new CurveCovariance(4e-14, 0, 0),
        MassesApart = new CurveCovariance(1e-14, 0, 0),
        CalibratedToKg = 400,
        TemperatureC = 20,
        Errors = new ErrorSources
        {
            ResolutionCounts = 10,
            BuoyancyRelative = 15e-6,
            ZeroReturnKg = 0.03,
            HysteresisKg = 0.08,
            HysteresisAtKg = 200,
            RepeatabilitySdKg = 0.02,
            RepeatabilityDegreesOfFreedom = 10,
            CreepRelative = 1e-4,
            LinearityKg = 0.05,
            PositionRelative = 2e-4,
            SpanPerKelvin = 1e-5,
        },
    };

    static double Term(string name, double kg, UseConditions? use = null) =>
        Pad.Budget(kg, use).Terms.SingleOrDefault(t => t.Name == name).StandardUncertainty;

    [Theory]
    [InlineData(BudgetTerms.Fit, 100_000 * 1e-7)]
    [InlineData(BudgetTerms.Masses, 100_000 * 2e-7)]
    [InlineData(BudgetTerms.Buoyancy, 15e-6 * 200 / 1.7320508075688772)]
    [InlineData(BudgetTerms.Resolution, 0.02 / 3.4641016151377544 * 1.4142135623730951)]
    [InlineData(BudgetTerms.ZeroReturn, 0.03 / 1.7320508075688772)]
    [InlineData(BudgetTerms.Hysteresis, 0.04 / 1.4142135623730951)]
    [InlineData(BudgetTerms.Repeatability, 0.02)]
    [InlineData(BudgetTerms.Creep, 1e-4 * 200 / 1.7320508075688772)]
    [InlineData(BudgetTerms.Linearity, 0.05 / 1.7320508075688772)]
    [InlineData(BudgetTerms.Position, 2e-4 * 200 / 1.7320508075688772)]
    [InlineData(BudgetTerms.Temperature, 1e-5 * 10 * 200 / 1.7320508075688772)]
    public void Terms_at_200_kg(string name, double expected) => Assert.Equal(expected, Term(name, 200), 1e-9);

    [Fact]
    public void Hysteresis_shrinks_towards_zero_load() => Assert.Equal(0.02 / Math.Sqrt(2), Term(BudgetTerms.Hysteresis, 100), 1e-9);

    [Fact]
    public void A_known_temperature_replaces_the_assumed_span()
    {
        Assert.Equal(1e-5 * 5 * 200 / Math.Sqrt(3), Term(BudgetTerms.Temperature, 200, new UseConditions(TemperatureC: 25)), 1e-9);
        Assert.Equal(0, Term(BudgetTerms.Temperature, 200, new UseConditions(TemperatureC: 20)));
    }

    [Fact]
    public void Another_place_brings_a_correction_and_its_uncertainty()
    {
        var track = Place.On("circuit", 40, 600);
        Assert.Equal(200 * 5e-5 * Math.Sqrt(2.0 / 3), Term(BudgetTerms.Gravity, 200, new UseConditions(track)), 1e-9);
        Assert.Equal(0, Term(BudgetTerms.Gravity, 200));
        Assert.Equal(200 * Shop.GravityMps2 / track.GravityMps2, Pad.Load(100_000, 0, new UseConditions(track)).Kg, 1e-9);
    }

    [Fact]
    public void Degrees_of_freedom_by_Welch_and_Satterthwaite()
    {
        var budget = Pad.Budget(200);
        var u = budget.StandardUncertainty;
        Assert.Equal(Math.Pow(u, 4) / (Math.Pow(0.01, 4) / 8 + Math.Pow(0.02, 4) / 10), budget.DegreesOfFreedom, 1e-6);
    }

    [Fact]
    public void A_load_beyond_the_calibration_procedure_is_marked()
    {
        Assert.False(Pad.Load(209_000, 0).BeyondCalibration);
        Assert.True(Pad.Load(211_000, 0).BeyondCalibration);
    }

    [Fact]
    public void What_was_never_tested_is_named() => Assert.Equal(
        [BudgetTerms.ZeroReturn, BudgetTerms.Hysteresis, BudgetTerms.Linearity, BudgetTerms.Repeatability, BudgetTerms.Creep,
        BudgetTerms.Position, BudgetTerms.Temperature],
        new ErrorSources().NotCovered());
}
