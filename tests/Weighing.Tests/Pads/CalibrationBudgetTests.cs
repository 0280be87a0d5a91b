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
    [InlineData(BudgetTerms.Linearity, 0.05 / 1.959963984540054)]
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
    public void Towards_the_highest_load_the_whole_loop_may_lie_beside_the_curve()
    {
        // Uniform from 0 to a beside the curve has a mean square of a²/3; within ± a/2 near its ends, of a²/8.
        Assert.Equal(0.08 / Math.Sqrt(3), Term(BudgetTerms.Hysteresis, 400), 1e-9);
        Assert.Equal(Math.Sqrt(0.08 * 0.08 * (1 / 3.0 + 1 / 8.0) / 2), Term(BudgetTerms.Hysteresis, 300), 1e-9);
    }

    [Fact]
    public void What_was_never_tested_is_named_and_taken_as_usual_where_that_can_be_said()
    {
        Assert.Equal([BudgetTerms.ZeroReturn, BudgetTerms.Linearity, BudgetTerms.Repeatability], new ErrorSources().NotCovered());
        Assert.Equal([BudgetTerms.Hysteresis, BudgetTerms.Creep, BudgetTerms.Position, BudgetTerms.Temperature], new ErrorSources().TakenAsUsual());
    }

    // By hand, for four cells: limits of UsualErrors over root three, creep and temperature over root four as well.
    [Theory]
    [InlineData(BudgetTerms.Creep, 0.735 / 3000 * 200 / 1.7320508075688772 / 2)]
    [InlineData(BudgetTerms.Temperature, 2e-5 * 10 * 200 / 1.7320508075688772 / 2)]
    [InlineData(BudgetTerms.Position, 2.5e-4 * 200 / 1.7320508075688772)]
    [InlineData(BudgetTerms.Hysteresis, 2e-4 * 450 / 1.7320508075688772)]
    public void What_is_taken_as_usual(string name, double expected)
    {
        var untested = Pad with { CellTrim = [1, 1, 1, 1], Errors = new ErrorSources() };
        Assert.Equal(expected, untested.Budget(200).Terms.Single(t => t.Name == name).StandardUncertainty, 1e-9);
        // A nominal sensitivity states all of its error as one.
        Assert.DoesNotContain((untested with { Standing = CalibrationStanding.Nominal }).Budget(200).Terms, t => t.Name == name);
    }

    [Fact]
    public void What_repeats_have_shown_of_the_position_does_not_count_twice()
    {
        var shown = Pad with { Errors = new ErrorSources { RepeatabilitySdKg = 0.02 } };
        var position = 2.5e-4 * 200 / Math.Sqrt(3);
        Assert.Equal(Math.Sqrt(position * position - 0.02 * 0.02), shown.Budget(200).Terms.Single(t => t.Name == BudgetTerms.Position).StandardUncertainty, 1e-9);
    }
}
