using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Results;
using Weighing.Tests.Calibration.Coverage;

namespace Weighing.Tests.Calibration.Results;

/// <summary>Pads with one known fault each; definitions of OIML R 60-1:2021, 3.7, worked by hand.</summary>
public class CharacterisationTests
{
    static readonly MassSet Masses = new([.. Enumerable.Range(1, 5).Select(i => KnownMass.Certified($"M{i}", 90, 0.002))]);
    static readonly LoadStack[] Stacks = [.. Enumerable.Range(0, 6).Select(n => LoadStack.Of([.. Enumerable.Range(1, n).Select(i => $"M{i}")]))];

    static SimulatedPad Quiet() => new(new Random(1)) { NoiseKg = 0 };

    static PadCharacteristics Of(SimulatedPad pad, int repetitions = 3)
    {
        var points = pad.Calibrate(Stacks, _ => 90, repetitions);
        return Characterisation.Of(Masses, points, CurveFitter.Fit(Masses, points));
    }

    [Fact]
    public void A_straight_pad_without_faults_shows_none()
    {
        var pad = Of(Quiet());
        Assert.Equal(0, pad.NonLinearity.Kg, 1e-9);
        Assert.Equal(0, pad.Hysteresis!.Value.Kg, 1e-9);
        Assert.Equal(0, pad.Repeatability!.Value.Kg, 1e-9);
        Assert.Equal(0, pad.ZeroReturnKg!.Value, 1e-9);
    }

    [Fact]
    public void Non_linearity_is_the_departure_from_the_line_through_zero_and_the_highest_load()
    {
        // Bow of 0.5 kg half way: at 180 and 270 kg 4 x 0.5 x 0.4 x 0.6 = 0.48 kg.
        var pad = Quiet();
        pad.BowKg = 0.5;
        var found = Of(pad).NonLinearity;
        Assert.Equal(0.48, found.Kg, 1e-6);
        Assert.InRange(found.LoadKg, 180 - 1e-9, 270 + 1e-9);
    }

    [Fact]
    public void Hysteresis_is_the_way_down_minus_the_way_up()
    {
        var pad = Quiet();
        pad.HysteresisKg = -0.2;
        var found = Of(pad).Hysteresis!.Value;
        Assert.Equal(-0.2 * 0.96, found.Kg, 1e-3);
    }

    [Fact]
    public void Zero_return_is_the_empty_pad_after_minus_before()
    {
        var pad = Quiet();
        pad.ZeroReturnKg = 0.05;
        // The zeros after the repetitions tilt the fitted line by a ten-thousandth.
        Assert.Equal(0.05, Of(pad).ZeroReturnKg!.Value, 1e-4);
    }

    [Fact]
    public void Repeatability_is_the_spread_over_the_repetitions()
    {
        List<ProcedurePoint> points = Quiet().Calibrate(Stacks, _ => 90);
        var index = points.FindIndex(p => p.Repetition == 2 && p.Way == LoadingWay.Up && p.Load == Stacks[3]);
        points[index] = points[index] with { Counts = points[index].Counts + 400 * 0.06 };
        var found = Characterisation.Of(Masses, points, CurveFitter.Fit(Masses, points)).Repeatability!.Value;
        Assert.Equal(0.06, found.Kg, 1e-4);
        Assert.Equal(270, found.LoadKg, 1e-9);
    }

    [Fact]
    public void One_repetition_up_says_nothing_of_repeatability_hysteresis_or_zero_return()
    {
        List<ProcedurePoint> points = [.. Quiet().Calibrate(Stacks, _ => 90, 1).Where(p => p.Way == LoadingWay.Up)];
        var pad = Characterisation.Of(Masses, points, CurveFitter.Fit(Masses, points));
        Assert.Null(pad.Repeatability);
        Assert.Null(pad.Hysteresis);
        Assert.Null(pad.ZeroReturnKg);
    }
}
