namespace Weighing.Tests.Statistics;

static class Digits
{
    /// <summary>Decimal digits that agree: -log10 of the relative error, as NIST StRD counts them; 15 at most.</summary>
    public static double Agree(double actual, double certified) => actual == certified
        ? 15
        : Math.Min(15, -Math.Log10(Math.Abs(actual - certified) / (certified == 0 ? 1 : Math.Abs(certified))));

    public static void AtLeast(double digits, double actual, double certified, string what) =>
        Assert.True(Agree(actual, certified) >= digits,
            $"{what}: {actual:R} agrees with {certified:R} to {Agree(actual, certified):F1} digits, wanted {digits}.");
}
