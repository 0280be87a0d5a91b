using ScaleLink.Weighing;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Planning;

namespace ScaleLink.Daemon.Work;

/// <summary>Numbers as a crew reads them: no finer than their uncertainty bears out.</summary>
internal static class Wording
{
    private const int MostDecimals = 3;

    /// <summary>"50.12 % ± 0.08 %", with the half width at 95 %.</summary>
    public static string WithInterval(Quantity quantity, string unit)
    {
        var half = quantity.HalfWidth();
        var decimals = Decimals(half);
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{quantity.Value.ToString($"F{decimals}")} {unit} ± {RoundedUp(half, decimals)} {unit}");
    }

    /// <summary>The crew's words for turns, without the ritual that follows.</summary>
    public static string Turns(Corners turns) => CrewWords.Say(turns).Replace(": then settle", "", StringComparison.Ordinal);

    // One digit of the uncertainty, two where the first is a 1 (JCGM 100:2008, 7.2.6 allows two at most).
    private static int Decimals(double half) => half > 0
        ? Math.Clamp((int)Math.Ceiling(-Math.Log10(half * 1.05)) + (Leading(half) == '1' ? 1 : 0), 0, MostDecimals)
        : MostDecimals;

    private static char Leading(double half) => half.ToString("E6", System.Globalization.CultureInfo.InvariantCulture)[0];

    // Up, so that nothing more is promised; a twentieth of grace, so that 0.0301 does not become 0.04.
    private static string RoundedUp(double half, int decimals)
    {
        var step = Math.Pow(10, -decimals);
        return (Math.Max(1, Math.Ceiling(half * 0.95 / step)) * step).ToString($"F{decimals}", System.Globalization.CultureInfo.InvariantCulture);
    }
}
