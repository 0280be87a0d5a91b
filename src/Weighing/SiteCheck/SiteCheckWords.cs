using System.Globalization;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>A judgement as a crew says it.</summary>
static class SiteCheckWords
{
    public static string Of(SiteCheckReport report)
    {
        var zero = string.Create(CultureInfo.InvariantCulture, $" Zero again at least every {report.ZeroEveryMinutes:0} minutes.");
        return report.Verdict switch
        {
            SiteCheckVerdict.Weigh => $"Weigh: here a cross weight is good to {Size(report.ReadingPercent)}, a change within this hour to {Size(report.ChangePercent)}.{zero}",
            SiteCheckVerdict.Compare => $"Compare: a change of cross weight within this hour is good to {Size(report.ChangePercent)}, a single reading {(report.ReadingPercent is null ? $"is {report.Parts[0].Words}" : $"only to {Size(report.ReadingPercent)}")}.{zero}",
            _ => $"Fix first: here a change of cross weight is good to no more than {Size(report.ChangePercent)}. {Worst(report).Remedy}",
        };
    }

    // What keeps readings from being compared is not always what keeps one from being believed.
    static SiteCheckPart Worst(SiteCheckReport report) => report.Parts.MaxBy(p => p.ChangePercent ?? double.PositiveInfinity)!;

    // Rounded up to two digits: never better than it is.
    static string Size(double? percent)
    {
        if (percent is not { } p)
            return "nothing that can be told";
        var step = Math.Pow(10, Math.Max(-3, Math.Floor(Math.Log10(Math.Max(p, 1e-3))) - 1));
        return string.Create(CultureInfo.InvariantCulture, $"± {Math.Ceiling(p / step * (1 - 1e-9)) * step:0.###} %");
    }
}
