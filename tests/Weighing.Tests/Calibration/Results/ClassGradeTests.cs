using ScaleLink.Weighing.Calibration.Fitting;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Results;
using Weighing.Tests.Calibration.Coverage;

namespace Weighing.Tests.Calibration.Results;

/// <summary>Limits of OIML R 76-1:2006, class III, e = 0.2 kg: 0.1 kg up to 100 kg, 0.2 kg up to 400 kg, 0.3 kg above.</summary>
public class ClassGradeTests
{
    static readonly LoadStack[] Stacks = [.. Enumerable.Range(0, 6).Select(n => LoadStack.Of([.. Enumerable.Range(1, n).Select(i => $"M{i}")]))];

    [Fact]
    public void A_good_pad_is_inside()
    {
        var grade = Grade(0.002, hysteresis: 0.05);
        Assert.Equal(GradeOutcome.Inside, grade.Outcome);
        Assert.Contains("inside class III limits for e = 0.2 kg up to 450 kg: yes, worst point error", grade.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Hysteresis_beyond_the_limit_is_outside_and_the_worst_point_named()
    {
        var grade = Grade(0.002, hysteresis: 0.6);
        Assert.Equal(GradeOutcome.Outside, grade.Outcome);
        // Half of 0.6 x 0.64 at 90 kg against 0.1 kg is the furthest beyond: ratio 1.9 there, 1.4 at 180 and 270 kg.
        Assert.Equal(90, grade.Worst!.Value.LoadKg, 1e-9);
        Assert.Equal(0.1, grade.Worst.Value.LimitKg, 1e-12);
    }

    [Fact]
    public void Masses_coarser_than_a_third_of_the_limit_are_not_graded_by()
    {
        // 3.7.1: a third of 0.1 kg is 0.033 kg; one mass of 90 kg ± 0.04 kg is too coarse.
        var grade = Grade(0.04, hysteresis: 0);
        Assert.Equal(GradeOutcome.NotGraded, grade.Outcome);
        Assert.Null(grade.Worst);
        Assert.Contains("a third", grade.Reason, StringComparison.Ordinal);
    }

    static ClassGrade Grade(double tolerance, double hysteresis)
    {
        var masses = new MassSet([.. Enumerable.Range(1, 5).Select(i => KnownMass.Certified($"M{i}", 90, tolerance))]);
        var points = new SimulatedPad(new Random(2)) { HysteresisKg = hysteresis, NoiseKg = 0.002 }.Calibrate(Stacks, _ => 90);
        return ClassGrade.Of(Characterisation.Of(masses, points, CurveFitter.Fit(masses, points)), masses);
    }
}
