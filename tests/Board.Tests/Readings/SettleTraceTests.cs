using ScaleLink.Api.V1;
using ScaleLink.Board.Readings;

namespace Board.Tests.Readings;

/// <summary>The trace has one point for each adjustment, however often the car settles in between.</summary>
public class SettleTraceTests
{
    private readonly SettleTrace _trace = new();

    [Fact]
    public void An_adjustment_adds_a_point_and_a_repeated_settle_does_not()
    {
        Add(52.00, 51.99);
        _trace.Add(new Loads { Verdict = Verdict.Moving });
        Add(52.01);
        Assert.Single(_trace.Settles);
        _trace.Add(new Loads { Verdict = Verdict.Moving });
        Add(51.2);
        Assert.Equal([52.01, 51.2], _trace.Settles.Select(s => s.CrossWeightPercent));
        Assert.Equal([0, 1], _trace.Settles.Select(s => s.Number));
    }

    [Fact]
    public void A_drift_without_movement_is_no_adjustment()
    {
        Add(52.00, 51.5);
        Assert.Equal(51.5, Assert.Single(_trace.Settles).CrossWeightPercent);
    }

    private void Add(params double[] settled)
    {
        foreach (var cross in settled)
            _trace.Add(new Loads { Verdict = Verdict.Settled, CrossWeightPercent = new MeasuredValue { Estimate = cross, StandardUncertainty = 0.02 } });
    }
}
