using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;
using Weighing.Tests.Cars;

namespace Weighing.Tests.WorkSessions.Learning;

/// <summary>Steps that went wrong the way they do in workshops.</summary>
public class StepCauseTests
{
    static readonly Corners Asked = new(2, -1.5, -1, 0.75);
    static readonly CornerMatrix Noise = CornerMatrix.Diagonal(Corners.Same(0.01));
    static readonly CarStatics Statics = new(Heron.Car, Heron.TotalKg);

    static StepCheck Happened(Corners change, bool settled = true) =>
        StepLearner.Start(Statics, new LoadSummary(Heron.Loads, Noise)).Record(new(Asked, new LoadSummary(Heron.Loads + change, Noise), settled)).Check;

    [Fact]
    public void A_step_as_planned_raises_nothing()
    {
        var check = Happened(Statics.FromTurns(Asked));

        Assert.True(check.Agrees);
        Assert.Empty(check.Causes);
    }

    [Fact]
    public void Turns_the_other_way()
    {
        var check = Happened(Statics.FromTurns(-1 * Asked));

        Assert.Equal(SessionCodes.StepDisagrees, check.Finding?.Code);
        Assert.Contains(check.Causes, c => c is { Cause: StepCause.WrongDirection, Explains: true });
    }

    [Fact]
    public void A_bar_left_connected()
    {
        var stiff = Heron.Car.WithBars(connected: true);
        stiff = stiff with { FrontBar = stiff.FrontBar! with { RateNPerMm = Stated.Exactly(60) }, RearBar = stiff.RearBar! with { RateNPerMm = Stated.Exactly(60) } };
        var believed = new CarStatics(stiff.WithBars(connected: false), Heron.TotalKg);
        var start = StepLearner.Start(believed, new LoadSummary(Heron.Loads, Noise));

        var change = new CarStatics(stiff, Heron.TotalKg).FromTurns(3 * Asked);
        var check = start.Record(new(3 * Asked, new LoadSummary(Heron.Loads + change, Noise))).Check;

        Assert.False(check.Agrees);
        Assert.Contains(check.Causes, c => c is { Cause: StepCause.BarConnected, Explains: true });
    }

    [Fact]
    public void Another_corner_than_asked()
    {
        var check = Happened(Statics.FromTurns(new(0, 0.5, -1, 0.75)));

        Assert.Contains(check.Causes, c => c is { Cause: StepCause.WrongCorner, Explains: true } && c.Words.ToString().Contains("RF had been turned instead of LF"));
    }

    [Fact]
    public void A_turn_forgotten()
    {
        var check = Happened(Statics.FromTurns(Asked.With(Corner.LF, 0)));

        Assert.Contains(check.Causes, c => c is { Cause: StepCause.TurnMissed, Explains: true } && c.Words.ToString().Contains("LF had not been turned"));
        Assert.Contains(check.Causes, c => c.Cause == StepCause.Binding);
    }

    [Fact]
    public void Somebody_got_in()
    {
        var check = Happened(Statics.FromTurns(Asked) + Statics.FromMass(75, new(1400, 350)));

        Assert.Equal(StepCause.MassChanged, check.Causes[0].Cause);
        Assert.Contains("+75.0 kg", check.Causes[0].Words);
    }

    [Fact]
    public void A_pad_that_slid_off_its_shims()
    {
        var check = Happened(Statics.FromTurns(Asked) + Statics.FromPads(new(0, 0, -15, -15)));

        Assert.Equal(StepCause.PatchMoved, check.Causes[0].Cause);
        Assert.Contains("turns cannot do", check.Finding?.Message);
    }

    [Fact]
    public void A_reading_taken_too_early_is_blamed_first()
    {
        var check = Happened(0.3 * Statics.FromTurns(Asked), settled: false);

        Assert.Equal(StepCause.NotSettled, check.Causes[0].Cause);
    }

    [Fact]
    public void A_step_that_disagrees_teaches_nothing_about_the_perches()
    {
        var start = StepLearner.Start(Statics, new LoadSummary(Heron.Loads, Noise));
        var (check, next) = start.Record(new(Asked, new LoadSummary(Heron.Loads - Statics.FromTurns(Asked), Noise)));

        Assert.False(check.Agrees);
        Assert.Equal(start.Effects.LoadsPerTurn, next.Effects.LoadsPerTurn);
        Assert.Equal(check.Observed.Estimate, next.CrossWeightPercent.Estimate, 9);
        Assert.Equal(Asked, next.TurnsInSession);
    }

    [Fact]
    public void A_surprising_step_widens_the_uncertainty_and_once_confirmed_is_believed()
    {
        var start = StepLearner.Start(Statics, new LoadSummary(Heron.Loads, Noise));
        var surprise = new LoadSummary(Heron.Loads + 1.4 * Statics.FromTurns(Asked), Noise);
        double Uncertainty(StepLearner known) => known.Effects.Forecast(Asked).LoadCovariance.LF.LF;

        var (check, unconfirmed) = start.Record(new(Asked, surprise));
        var (_, confirmed) = start.Record(new(Asked, surprise, Confirmed: true));

        Assert.False(check.Agrees);
        Assert.Equal(4 * Uncertainty(start), Uncertainty(unconfirmed), 1e-9);
        Assert.InRange((confirmed.Effects.LoadsPerTurn * Asked).LF / Statics.FromTurns(Asked).LF, 1.1, 1.4);
        Assert.True(Uncertainty(confirmed) < Uncertainty(unconfirmed));
    }
}
