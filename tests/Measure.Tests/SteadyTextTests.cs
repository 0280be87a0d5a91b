using Microsoft.Extensions.Time.Testing;
using ScaleLink.Measure;

namespace Measure.Tests;

public class SteadyTextTests
{
    private readonly FakeTimeProvider _time = new();

    private static Value WithU(double expanded) => new(50.1234, expanded / Coverage.Factor());

    [Fact]
    public void The_number_of_digits_changes_only_after_two_seconds()
    {
        var steady = new SteadyText(_time);
        Assert.Equal("50.1", steady.Show(WithU(0.4), Unit.Percent).Estimate);
        for (var tenth = 0; tenth < 20; tenth++)
        {
            Assert.Equal("50.1", steady.Show(WithU(0.12), Unit.Percent).Estimate);
            _time.Advance(TimeSpan.FromMilliseconds(100));
        }

        Assert.Equal("50.12", steady.Show(WithU(0.12), Unit.Percent).Estimate);
    }

    [Fact]
    public void A_place_that_is_wanted_now_and_then_changes_nothing()
    {
        var steady = new SteadyText(_time);
        steady.Show(WithU(0.4), Unit.Percent);
        for (var second = 0; second < 10; second++)
        {
            Assert.Equal("50.1", steady.Show(WithU(second % 2 == 0 ? 0.12 : 0.4), Unit.Percent).Estimate);
            _time.Advance(TimeSpan.FromSeconds(1));
        }
    }

    [Fact]
    public void A_claim_that_goes_is_marked_at_once_and_keeps_its_digits_for_two_seconds()
    {
        var steady = new SteadyText(_time);
        steady.Show(WithU(0.12), Unit.Percent);
        Assert.Equal("~50.12", steady.Show(new(50.1234, null), Unit.Percent).Alone);
        _time.Advance(SteadyText.Patience);
        Assert.Equal("~50.1", steady.Show(new(50.1234, null), Unit.Percent).Alone);
    }

    [Fact]
    public void A_live_load_is_never_finer_than_a_tenth_and_another_unit_starts_afresh()
    {
        var steady = new SteadyText(_time);
        Assert.Equal("262.4 ± 0.1", steady.Show(new(262.437, 0.002), Unit.Kilogram).Bare);
        Assert.Equal("578.6 ± 0.1", steady.Show(new(262.437, 0.002), Unit.Pound).Bare);
        Assert.Null(steady.Show(null, Unit.Kilogram));
        Assert.Equal("~262", steady.Show(new(262.437, null), Unit.Kilogram).Bare);
    }
}
