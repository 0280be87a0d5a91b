using Google.Protobuf.WellKnownTypes;
using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.SiteCheck;

namespace Client.Tests.SiteCheck;

/// <summary>A watch over empty pads in words. Readability is common practice; the figures are made up.</summary>
public class SiteCheckPageTests
{
    private static readonly DateTime At = new(2026, 5, 2, 8, 30, 0, DateTimeKind.Utc);

    private static SiteCheckReport Report()
    {
        var report = new SiteCheckReport
        {
            Verdict = SiteCheckVerdict.Compare, ChangePercent = 0.042, ZeroEveryMinutes = 20, WantedPercent = 0.2, Seconds = 200,
            Statement = "Compare: a change of cross weight within this hour is good to ± 0.042 %.", Drift = new SiteCheckDrift(),
        };
        report.Parts.Add(new SiteCheckPart { Kind = SiteCheckPartKind.Warp, ChangePercent = 0, Words = "not known: the heights of the pads were not measured", Remedy = "Measure them." });
        report.Parts.Add(new SiteCheckPart { Kind = SiteCheckPartKind.Drift, Worst = Corner.Rf, ReadingPercent = 0.03, ChangePercent = 0.042, Words = "the zero of RF moves most", Remedy = "Shade RF." });
        report.Pads.Add(new SiteCheckPad { Corner = Corner.Rf, DriftKgPer10Min = new MeasuredValue { Estimate = 0.123, StandardUncertainty = 0.01 }, TemperatureC = 31.4, WarmedK = 5.2, TiltChangeDeg = 0.01 });
        report.Findings.Add(new ScaleLink.Api.V1.Diagnostic { Code = "SL-582", Message = "The zero of RF drifts.", Remedy = "Shade RF." });
        return report;
    }

    [Fact]
    public void What_is_not_known_says_so_and_the_first_remedy_is_that_of_the_first_part()
    {
        var lines = SiteCheckPage.Outcome(new SiteCheckRecord { StartedAt = Timestamp.FromDateTime(At), Who = "crew", TotalKg = 1048, Report = Report() }, Glyphs.Plain).ToList();
        Assert.Equal("Watch of 2026-05-02 14:00 +05:30 by crew, for a car of 1048 kg", lines[0]);
        Assert.Contains("+- 0.042 %", lines[1]);
        Assert.Contains(lines, l => l.StartsWith("  warp         reading not known  change +- 0.000 %", StringComparison.Ordinal));
        Assert.Contains("  First: Measure them.", lines);
        Assert.Contains("  RF drifts +0.123 kg +- 0.020 kg in 10 min, 31.4 °C (+5.2 K), tilted by 0.01°", lines);
        Assert.Contains(lines, l => l.EndsWith("(SL-582)", StringComparison.Ordinal));
        Assert.Contains("comes on top", lines[^1]);
    }

    [Fact]
    public void The_beginning_and_an_early_end_are_told_without_figures()
    {
        Assert.Equal(["Watching the empty pads: 0:09 of 10:00. Keep off them.", "Too little seen yet to tell anything."], SiteCheckPage.Progress(new SiteCheckProgress { ElapsedS = 9.7, Minutes = 10 }, Glyphs.Rich));
        var lines = SiteCheckPage.Progress(new SiteCheckProgress { ElapsedS = 205, Minutes = 10, SoFar = Report() }, Glyphs.Rich).ToList();
        Assert.StartsWith("So far: Compare", lines[1]);
        Assert.Contains("have not been watched", Assert.Single(SiteCheckPage.Outcome(null, Glyphs.Rich)));
        var cut = new SiteCheckRecord { StartedAt = Timestamp.FromDateTime(At), Who = "crew", TotalKg = 1000, TotalIsGuessed = true, Why = new ScaleLink.Api.V1.Diagnostic { Code = "SL-587", Message = "Cut short.", Remedy = "Watch again." } };
        Assert.Equal(2, SiteCheckPage.Outcome(cut, Glyphs.Rich).Count());
    }
}
