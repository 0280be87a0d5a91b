using ScaleLink.Client.Readings;

namespace Client.Tests.Readings;

public class StepTraceTests
{
    private readonly StepTrace _trace = new();

    [Fact]
    public void Each_adjustment_leaves_one_step()
    {
        Settle(52.0);
        Move();
        Settle(51.0);
        Settle(51.01);
        Assert.Equal([(0, 52.0), (1, 51.01)], _trace.Steps.Select(s => (s.Number, s.CrossWeightPercent)));
    }

    [Fact]
    public void Bouncing_without_turning_makes_no_step()
    {
        Settle(52.0);
        Move();
        Settle(52.04);
        Assert.Equal([(0, 52.04)], _trace.Steps.Select(s => (s.Number, s.CrossWeightPercent)));
    }

    [Fact]
    public void An_announced_adjustment_counts_however_small_its_effect()
    {
        Settle(52.0);
        _trace.Announce("RF LR up 1/8", 52.2);
        _trace.HandsOff();
        Settle(52.0);
        Assert.Equal("RF LR up 1/8", _trace.Steps[^1].Label);
        Assert.Equal(2, _trace.Steps.Count);
        Assert.Null(_trace.Predicted);
    }

    [Fact]
    public void While_hands_are_on_the_car_nothing_counts()
    {
        Settle(52.0);
        _trace.Announce("turning", 51);
        Settle(51.5);
        Assert.Equal(51, _trace.Predicted);
        Assert.Equal([52.0], _trace.Steps.Select(s => s.CrossWeightPercent));
    }

    [Fact]
    public void A_held_reading_is_no_step()
    {
        _trace.Add(Readouts.Held(Readouts.Settled(), 3));
        Assert.Empty(_trace.Steps);
    }

    private void Settle(double cross) => _trace.Add(Readouts.Live(Readouts.Settled(cross)));

    private void Move() => _trace.Add(Readouts.Live(Readouts.Moving()));
}
