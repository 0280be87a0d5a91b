using ScaleLink.Weighing.Settling.Noise;

namespace Weighing.Tests.Settling.Noise;

/// <summary>Against the test suites of W. J. Riley, Handbook of Frequency Stability Analysis, NIST SP 1065 (2008), pp. 107-108.</summary>
public class AllanDeviationTests
{
    public static TheoryData<string, int> Published => new()
    {
        { "set_1000", 0 }, { "set_1000", 1 }, { "set_1000", 2 }, { "set_9", 0 }, { "set_9", 1 },
    };

    [Theory]
    [MemberData(nameof(Published))]
    public void Agrees_with_the_published_digits(string set, int row)
    {
        var suite = ReferenceData.Json("allan-sp1065-test-suite.json").GetProperty(set);
        var readings = set == "set_9" ? suite.GetProperty("y").Numbers() : Thousand();
        var length = suite.GetProperty("averaging")[row].GetInt32();

        SevenDigits(suite.GetProperty("allan_dev")[row].GetDouble(), AllanDeviation.Plain(readings, length));
        SevenDigits(suite.GetProperty("overlapping_allan_dev")[row].GetDouble(), AllanDeviation.Overlapping(readings, length));
        SevenDigits(suite.GetProperty("modified_allan_dev")[row].GetDouble(), AllanDeviation.Modified(readings, length));
    }

    [Fact]
    public void The_thousand_points_have_the_published_deviation()
    {
        var statistics = new RunningStatistics();
        foreach (var reading in Thousand()) statistics.Add(reading);
        SevenDigits(.2884664, statistics.StandardDeviation!.Value);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    public void Refuses_a_length_that_the_readings_do_not_allow(int length)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => AllanDeviation.Plain(new double[9], length));
        Assert.Throws<ArgumentOutOfRangeException>(() => AllanDeviation.Overlapping(new double[9], length));
        Assert.Throws<ArgumentOutOfRangeException>(() => AllanDeviation.Modified(new double[9], length));
    }

    static double[] Thousand()
    {
        var state = 1234567890L;
        var readings = new double[1000];
        foreach (ref var reading in readings.AsSpan())
        {
            reading = state / 2147483647.0;
            state = 16807 * state % 2147483647;
        }
        return readings;
    }

    static void SevenDigits(double published, double actual) => Assert.Equal(published, actual, published * 1e-6);
}
