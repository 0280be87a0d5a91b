using System.Text.Json;
using System.Text.RegularExpressions;

namespace Client.Tests.Bay;

/// <summary>The flat patch and the car by the commands alone, against the real daemon and the simulated car.</summary>
[Trait("needs", "bay")]
public sealed class PatchOnABayTests(RealBay bay) : IClassFixture<RealBay>, IDisposable
{
    private static readonly string[] Corners = ["lf", "rf", "lr", "rr"];
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-patch-");

    public static bool Can => RealBay.HasPseudoTerminals;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public async Task From_an_unknown_patch_to_corrected_loads_and_back()
    {
        await SiteCheck();
        await bay.Zero();
        await SiteCheckStopped();
        await Task.Delay(await bay.Bay.Car.Lower(Cancel), Cancel);
        await Task.Delay(await bay.Bay.Car.Settle(1.5, roll: true, Cancel), Cancel);
        await Settled();
        await Unmeasured();
        var heightMeasurement = HeightMeasurement("""{ "note": "line laser", "heights_mm": { "LF": 0.0, "RF": 1.5, "LR": -0.5, "RR": 0.5, "u_mm": 0.2 } }""");
        await Mistakes();
        Assert.Contains("not saved: line laser", await Done("patch", "heights", heightMeasurement, "--check"));
        Assert.Contains("SL-532", await Done("patch"));
        Assert.Contains("by crew: line laser", await Done("patch", "heights", heightMeasurement, "--who", "crew"));
        await Shims();
        await Corrections();
        Assert.Contains("SL-532", await Done("patch", "clear", "--who", "crew"));
    }

    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public async Task Cars_plans_and_sessions_answer_in_json_also_when_they_refuse()
    {
        var heron = Shared.RepositoryRoot.File("docs", "cars", "heron.json");
        Assert.Equal("Heron", (await Json(0, "car", "use", heron, "--who", "crew")).GetProperty("name").GetString());
        Assert.Contains((await Json(0, "car", "list")).GetProperty("cars").EnumerateArray(), c => c.GetProperty("in_bay").GetBoolean());
        Assert.Equal("SL-560", Refused(await Json(2, "plan")));
        Assert.False((await Json(0, "work-session", "--once")).TryGetProperty("session", out var session) && session.ValueKind == JsonValueKind.Object);
        Assert.Equal("SL-562", Refused(await Start()));
        var bad = HeightMeasurement(File.ReadAllText(heron).Replace("\"value\": 1480", "\"value\": 58.3", StringComparison.Ordinal));
        foreach (var command in new[] { "use", "show", "check" })
            Assert.Equal("SL-501", (await Json(2, "car", command, bad)).GetProperty("mistakes")[0].GetProperty("code").GetString());
    }

    // A session that is begun, refuses a turn before its baseline, and is given up.
    private async Task<JsonElement> Start()
    {
        Assert.Equal("SESSION_STATE_PREPARING", (await Json(0, "work-session", "start")).GetProperty("state").GetString());
        var refused = await Json(2, "work-session", "turn", "rf", "-0.5");
        Assert.StartsWith("abandoned", (await Json(0, "work-session", "abandon", "--because", "a test")).GetProperty("ending").GetString());
        return refused;
    }

    private async Task SiteCheck()
    {
        Assert.Contains("SL-590", (await bay.Run("patch", "site-check", "--minutes", "2")).Error);
        Assert.Contains("have not been watched", (await bay.Run("patch", "site-check", "--last")).Output);
        Assert.Equal("SL-593", Refused(await Json(2, "patch", "site-check", "--stop", "--who", "crew")));
    }

    // Begun by one terminal and ended by another, long before there is much to tell.
    private async Task SiteCheckStopped()
    {
        Assert.Equal("SL-594", Refused(await Json(2, "patch", "site-check", "--minutes", "1")));
        var watching = bay.Run("patch", "site-check", "--minutes", "2", "--total", "1048", "--who", "crew");
        while (!(await Json(1, "patch", "site-check", "--last")).TryGetProperty("now", out _))
            await Task.Delay(200, Cancel);
        Assert.Contains("SL-587", (await bay.Run("patch", "site-check", "--stop", "--who", "Ada")).Output);
        var (code, output, _) = await watching;
        Assert.Equal(1, code);
        Assert.Contains("Caution: Weigh on no slope", output);
        Assert.Contains("0:0", output);
        Assert.Contains("Ada stopped it", output);
        Assert.Equal("SITE_CHECK_ENDING_STOPPED", (await Json(1, "patch", "site-check", "--last")).GetProperty("last").GetProperty("ending").GetString());
    }

    private async Task Unmeasured()
    {
        var text = await Done("patch");
        Assert.Matches(@"The patch has not been measured\..* \(SL-532\)", text);
        Assert.Contains("LF tilts pitch", text);
        Assert.Contains("Heights between pads they cannot see", text);
        Assert.Contains("SL-532", (await bay.Run("patch", "shims", "1x4")).Error);
    }

    private async Task Mistakes()
    {
        var bad = HeightMeasurement("""{ "heights_mm": { "LF": 0.0, "RF": 1.5, "LR": -0.5, "u_mm": 0.2 } }""");
        var (code, _, error) = await bay.Run("patch", "heights", bad);
        Assert.Equal(2, code);
        Assert.Matches($@"{Regex.Escape(bad)}:1: .* \(SL-514\)", error);
        Assert.Equal("SL-514", (await Json(2, "patch", "heights", bad)).GetProperty("mistakes")[0].GetProperty("code").GetString());
        var open = HeightMeasurement("""{ "differences": [ { "from": "LF", "to": "RF", "mm": 1, "u_mm": 0.2 } ] }""");
        Assert.Equal("SL-520", Refused(await Json(2, "patch", "heights", open)));
    }

    private async Task Shims()
    {
        // RF is the highest: LF wants 1 mm, LR 1.5, RR 0.5 to come within 0.5 mm of it, and with 1 instead no warp is left.
        var text = await Done("patch", "shims", "0.5x8", "1x8");
        Assert.Equal(["LF  1 mm", "RF  none", "LR  1 + 0.5 mm", "RR  1 mm"], text.Split('\n').Take(4).Select(l => l.TrimEnd()));
        Assert.Contains("Measure the heights of the pads again", text);
        var json = await Json(1, "patch", "shims", "2x1");
        Assert.Equal("SL-528", json.GetProperty("finding").GetProperty("code").GetString());
        Assert.Contains("thickness x pieces", (await bay.Run("patch", "shims", "0.5")).Error);
    }

    // What the report says of a correction is what the live loads change by.
    private async Task Corrections()
    {
        var before = await Settled();
        var size = (await Json(0, "patch", "on", "warp", "--who", "crew")).GetProperty("corrections").EnumerateArray().Single(c => c.GetProperty("name").GetString() == "warp");
        Assert.True(size.GetProperty("on").GetBoolean());
        var after = await Settled(corrected: true);
        Assert.Matches("kg, .*patch: warp [0-9]+\\.[0-9] kg", await Done("watch", "--plain", "--seconds", "1"));
        foreach (var corner in Corners)
        {
            var change = Load(after, corner) - Load(before, corner);
            Assert.InRange(Math.Abs(change), 0.5, 10);
            // The loads move by noise and rounding besides.
            Assert.Equal(size.GetProperty("size_kg").GetProperty(corner).GetProperty("estimate").GetDouble(), change, 0.2);
        }

        Assert.Contains("warp   off  would add LF", await Done("patch", "off", "warp", "--who", "crew"));
        Assert.Equal(Load(before, "lf"), Load(await Settled(), "lf"), 0.2);
    }

    private Task<JsonElement> Settled(bool corrected = false) => bay.Settled(r => corrected == r.GetRawText().Contains("\"warp\"", StringComparison.Ordinal));

    private static double Load(JsonElement reading, string corner) => reading.GetProperty("corners").GetProperty(corner.ToUpperInvariant()).GetProperty("load_kg").GetProperty("estimate").GetDouble();

    private static string? Refused(JsonElement answer) => answer.GetProperty("trouble").GetProperty("code").GetString();

    private string HeightMeasurement(string text)
    {
        var path = Path.Combine(_folder.FullName, $"{Guid.NewGuid():N}.json");
        File.WriteAllText(path, text);
        return path;
    }

    private async Task<JsonElement> Json(int code, params string[] arguments)
    {
        var (ended, output, error) = await bay.Run([.. arguments, "--json"]);
        Assert.True(ended == code, $"{string.Join(' ', arguments)} ended with {ended}: {output}{error}");
        return JsonDocument.Parse(output).RootElement;
    }

    private async Task<string> Done(params string[] arguments)
    {
        var (code, output, error) = await bay.Run(arguments);
        Assert.True(code == 0, $"{string.Join(' ', arguments)}: {output}{error}");
        return output;
    }
}
