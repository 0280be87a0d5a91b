using Microsoft.Extensions.Time.Testing;
using ScaleLink.Client.Readings;

namespace Client.Tests.Readings;

public class SteadyTextsTests
{
    [Fact]
    public void Each_place_keeps_its_own_digits()
    {
        var time = new FakeTimeProvider();
        var texts = new SteadyTexts(time);
        Assert.Equal("52.1", texts.Percent("cross", Readouts.Measured(52.143, 0.4)).Estimate);
        Assert.Equal("52.74", texts.Percent("front", Readouts.Measured(52.743, 0.04)).Estimate);
        Assert.Equal("52.1", texts.Percent("cross", Readouts.Measured(52.143, 0.04)).Estimate);
        time.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal("52.14", texts.Percent("cross", Readouts.Measured(52.143, 0.04)).Estimate);
    }
}
