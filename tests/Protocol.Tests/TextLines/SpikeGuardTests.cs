using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Protocol.Tests.TextLines;

public class SpikeGuardTests
{
    [Fact]
    public void A_single_reading_that_stands_off_is_dropped() =>
        Assert.Equal([100, 101, 101, 100], Through([100, 101, 500, 101, 100, 100]));

    [Fact]
    public void A_car_that_rolls_on_and_rocks_passes()
    {
        Assert.Equal([0, 0, 260, 240, 230, 250], Through([0, 0, 260, 240, 230, 250, 250]));
        var rocking = Enumerable.Range(0, 200).Select(k => 250 + 40 * Math.Sin(2 * Math.PI * 2 * k / 80.0)).ToArray();
        Assert.Equal(199, Through(rocking).Count);
    }

    [Fact]
    public void Instants_go_with_their_readings()
    {
        var guard = new SpikeGuard(1);
        Assert.True(Lines.Pattern().TryRead("W 1.0 kg", out var reading));
        Assert.False(guard.TryPass(reading, 7, out _, out _));
        Assert.True(guard.TryPass(reading, 8, out _, out var at));
        Assert.Equal(7, at);
    }

    static List<double> Through(double[] kilograms)
    {
        var guard = new SpikeGuard(10_000 * 2);
        var passed = new List<double>();
        foreach (var kg in kilograms)
        {
            Assert.True(Lines.Pattern(@"(?<load>[\d.]+)").TryRead($"{kg:0.0000}", out var reading));
            if (guard.TryPass(reading, 0, out var one, out _))
                passed.Add(Math.Round(one.Sum / 10_000.0));
        }

        Assert.Equal(kilograms.Length - 1 - passed.Count, guard.Dropped);
        return passed;
    }
}
