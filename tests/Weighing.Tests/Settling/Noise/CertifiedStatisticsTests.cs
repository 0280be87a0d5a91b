using ScaleLink.Weighing.Settling.Noise;

namespace Weighing.Tests.Settling.Noise;

/// <summary>
/// Against certified values: NIST/ITL Statistical Reference Datasets, Univariate Summary Statistics. NumAcc2 to 4 are built by
/// their published rule; the others are read from their files.
/// </summary>
public class CertifiedStatisticsTests
{
    public static TheoryData<string> Sets =>
        ["NumAcc1", "NumAcc2", "NumAcc3", "NumAcc4", "Lottery", "Michelso", "Mavro", "Lew"];

    [Theory]
    [MemberData(nameof(Sets))]
    public void Running_mean_and_deviation(string set)
    {
        var statistics = new RunningStatistics();
        foreach (var value in Values(set)) statistics.Add(value);

        Assert.Equal(Certified(set, "observations"), statistics.Count);
        Near(Certified(set, "mean"), statistics.Mean, 1e-13);
        // One pass in double precision keeps eight digits of the worst set, where the mean is 1e8 times the deviation.
        Near(Certified(set, "standard_deviation_n_minus_1"), statistics.StandardDeviation!.Value, set.StartsWith('N') ? 2e-8 : 1e-11);
    }

    [Theory]
    [MemberData(nameof(Sets))]
    public void Autocorrelation_at_lag_one(string set) =>
        Near(Certified(set, "lag1_autocorrelation"), Autocorrelation.At(Values(set), 1), set.StartsWith('N') ? 1e-8 : 1e-13);

    static double Certified(string set, string what) =>
        ReferenceData.Json("nist-strd-univariate-certified.json").GetProperty("datasets").GetProperty(set).GetProperty(what).GetDouble();

    static double[] Values(string set) => set switch
    {
        "NumAcc2" => Alternating(1.2, 1.1, 1.3),
        "NumAcc3" => Alternating(1000000.2, 1000000.1, 1000000.3),
        "NumAcc4" => Alternating(10000000.2, 10000000.1, 10000000.3),
        _ => [.. ReferenceData.Rows($"nist-strd-univariate-{set.ToLowerInvariant()}.csv").Select(row => row[0])],
    };

    static double[] Alternating(double first, double low, double high) =>
        [first, .. Enumerable.Range(0, 1000).Select(i => i % 2 == 0 ? low : high)];

    static void Near(double expected, double actual, double relative) => Assert.Equal(expected, actual, Math.Abs(expected) * relative);
}
