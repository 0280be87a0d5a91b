using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Export;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>Sessions as files. CSV after RFC 4180; the sheet is the project's own.</summary>
public sealed class ExportTests : IDisposable
{
    private readonly Bench _bench = new();

    public ExportTests()
    {
        _bench.Prepare();
        _bench.Weigh(Bench.FirstLoads);
        _bench.Take(SessionRules.Adjust(_bench.View, null, asPlanned: true, ""));
        _bench.Take(SessionRules.Weigh(_bench.View, _bench.Reading(Bench.LoadsAfter(_bench.Session.OpenTurns, 0.05)), new(110, 111.5, 120, 121), "=1+1, said \"Kim\" <script>alert(1)</script>"));
        _bench.Weigh(Bench.LoadsAfter(_bench.Session.TurnsSinceBaseline, -0.04));
    }

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void The_table_has_a_line_for_each_reading_and_quotes_what_people_typed()
    {
        var lines = Table();
        Assert.Equal(4, lines.Length);
        Assert.All(lines.Where(l => !l.Contains('"')), l => Assert.Equal(lines[0].Split(',').Length, l.Split(',').Length));
        Assert.EndsWith("\"'=1+1, said \"\"Kim\"\" <script>alert(1)</script>\"", lines[2]);
        Assert.Contains(",110,111.5,120,121,", lines[2]);
        Assert.StartsWith("0,2026-05-02T", lines[1]);
    }

    [Fact]
    public void The_head_the_sheet_and_the_standing_say_the_same_digits()
    {
        var head = SessionCsv.Of(_bench.Session).Split("\r\n").TakeWhile(l => l.StartsWith('#')).ToList();
        var standing = Standing.Of(_bench.Session)!;
        var total = ValueText.Of(_bench.Session.Weighings[^1].Step.Reading.Whole.TotalKg, Unit.Kilogram).Full;
        Assert.Contains(head, l => l.EndsWith(standing.Words, StringComparison.Ordinal) && l.Contains(ValueText.Of(standing.CrossWeightPercent, Unit.Percent).Full));
        Assert.Contains(head, l => l.EndsWith($"total {total}", StringComparison.Ordinal));
        Assert.Contains(total, System.Net.WebUtility.HtmlDecode(SessionSheet.Of(_bench.View)));
    }

    [Fact]
    public void The_sheet_ends_with_each_corner_and_its_uncertainty_and_has_the_times_of_its_place()
    {
        var reading = _bench.Session.Weighings[^1].Step.Reading;
        var page = System.Net.WebUtility.HtmlDecode(SessionSheet.Of(_bench.View));
        foreach (var corner in Corners.All)
        {
            var load = reading.LoadKg(corner);
            Assert.Equal(Math.Pow(reading.RepeatUKg[corner], 2) + Math.Pow(reading.StandingUKg[corner], 2), Math.Pow(load.Uncertainty, 2), 9);
            Assert.Contains($"<td>{corner}</td><td>{ValueText.Of(load, Unit.Kilogram).Full}</td>", page);
        }

        Assert.Contains($"begun {LocalTime.Minute(_bench.Session.StartedAt)} by", page);
        Assert.Contains("+05:30", page);
        Assert.Equal(["0", "1", "2"], System.Text.RegularExpressions.Regex.Matches(page, "data-weighing=\"(\\d+)\"").Select(m => m.Groups[1].Value));
    }

    [Fact]
    public void Corrections_of_the_patch_stand_in_the_table_and_on_the_sheet()
    {
        var reading = _bench.Reading(Bench.FirstLoads) with { Patch = [new("slope", new(1.24, -1.24, -0.5, 0.5)), new("warp", null)] };
        _bench.Take(SessionRules.Weigh(_bench.View, reading, null, ""));
        var lines = Table();
        var column = Array.IndexOf(lines[0].Split(','), "patch_corrections");
        Assert.Equal("slope 1.2 kg; warp refused", lines[^1].Split(',')[column]);
        Assert.Equal("", lines[1].Split(',')[column]);
        Assert.Contains("corrected for the patch: slope 1.2 kg, warp refused", SessionSheet.Of(_bench.View));
    }

    [Fact]
    public void The_sheet_stands_alone_and_escapes_what_people_typed()
    {
        _bench.Take(SessionRules.Check(_bench.View, "lock_rings", true, false, "<b>12 Nm</b>", ""));
        var page = SessionSheet.Of(_bench.View);
        if (Environment.GetEnvironmentVariable("SCALELINK_SHEET") is { } file)
            File.WriteAllText(file, page);
        Assert.DoesNotContain("<script", page);
        Assert.DoesNotContain("<b>", page);
        Assert.Contains("&lt;b&gt;12 Nm", page);
        Assert.Contains("<svg", page);
        Assert.DoesNotContain("http", page);
        foreach (var text in new[] { "Heron", "Student t", "Back to the baseline", "Not approved for trade", "Cross weight = (RF + LR) / total" })
            Assert.Contains(text, page);
    }

    [Fact]
    public void Two_sessions_compare_with_the_uncertainties_of_both()
    {
        var same = SessionComparison.Of(_bench.Session, _bench.Session);
        Assert.Empty(same.Findings);
        Assert.All(same.Figures, f => Assert.Equal(0, f.Difference!.Value.Estimate, 9));
        Assert.All(same.Figures, f => Assert.Equal(Math.Sqrt(2) * f.First!.Value.Uncertainty, f.Difference!.Value.Uncertainty, 9));
        var other = _bench.Session with { Start = _bench.Session.Start with { CarHash = "another" } };
        Assert.Equal("SL-574", Assert.Single(SessionComparison.Of(_bench.Session, other).Findings).Code);
    }

    // Without the head for people.
    private string[] Table() => [.. SessionCsv.Of(_bench.Session).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).SkipWhile(l => l.StartsWith('#'))];
}
