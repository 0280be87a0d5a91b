using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Masses;
using ScaleLink.Weighing.Calibration.Procedure;

namespace Weighing.Tests.Calibration.Flow;

public class PlanChoiceTests
{
    [Fact]
    public void Where_nobody_asks_the_short_plan_is_chosen_when_it_keeps_to_the_limit_in_service_of_class_III()
    {
        var choice = PlanChoice.Between(Brief(0.01), Full(0.01));
        Assert.Equal(PlanLength.Short, choice.Length);
        // OIML R 76-1:2006, table 6 and 3.5.2: 400 kg are 2000 intervals of 0.2 kg, one interval on verification and two in service.
        Assert.InRange(choice.Forecast.AtHighestKg, 0.1, 0.4);
        Assert.StartsWith("Short plan. 3 loads to 400 kg", choice.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_full_plan_is_chosen_for_a_pad_that_is_known_to_repeat_badly() =>
        Assert.Equal(PlanLength.Full, PlanChoice.Between(Noisy(Brief(0.01)), Noisy(Full(0.01))).Length);

    [Fact]
    public void What_is_asked_decides_before_that()
    {
        var (brief, full) = (PlanForecast.Of(Brief(0.01)).AtHighestKg, PlanForecast.Of(Full(0.01)).AtHighestKg);
        Assert.True(full < brief);
        Assert.Equal(PlanLength.Short, PlanChoice.Between(Asked(Brief(0.01), brief + 0.001), Asked(Full(0.01), brief + 0.001)).Length);
        Assert.Equal(PlanLength.Full, PlanChoice.Between(Asked(Brief(0.01), brief - 0.001), Asked(Full(0.01), brief - 0.001)).Length);
    }

    static ProcedurePlan Noisy(ProcedurePlan plan) => plan with { Before = plan.Before with { Errors = plan.Before.Errors with { RepeatabilitySdKg = 0.3 } } };

    static ProcedurePlan Asked(ProcedurePlan plan, double kg) => plan with { Asked = new AskedUncertainty(kg, 400) };

    static ProcedurePlan Brief(double limit) => Full(limit) with { Loads = LoadChoice.Of(Fifties(limit), 450, PlanChoice.ShortLoads), Repetitions = 1, Preloads = 1 };

    static ProcedurePlan Full(double limit) =>
        ProcedureWalk.Plan with { Masses = Fifties(limit), Loads = LoadChoice.Of(Fifties(limit), 450), CornerLoad = null, CreepTest = false, LoopApart = true };

    static MassSet Fifties(double limit) => new([.. Enumerable.Range(1, 8).Select(i => KnownMass.Stated($"50 no. {i}", 50, limit))]);
}
