using System.Text.Json;
using Client.Tests.Terminal;
using ScaleLink.Client;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;

namespace Client.Tests.Bay;

/// <summary>Every command against the real daemon. In the order of a day: zero on empty pads, then the car comes down.</summary>
[TestMethodOrderer(typeof(ByName))]
[Trait("needs", "bay")]
public class CommandsOnABayTests(RealBay bay) : IClassFixture<RealBay>
{
    private const string Skip = RealBay.WhyNot;

    // The Heron with its driver.
    private const double TotalKg = 1048;

    public static bool Can => RealBay.HasPseudoTerminals;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task A_pads_are_live_and_say_who_they_are()
    {
        var (code, output, _) = await bay.Run("pads", "--json");
        using var json = JsonDocument.Parse(output);
        var pads = json.RootElement.GetProperty("pads").EnumerateArray().ToList();
        Assert.Equal(0, code);
        Assert.Equal(["LF", "RF", "LR", "RR"], pads.Select(p => p.GetProperty("corner").GetString()));
        Assert.Equal(["SLP-1001", "SLP-1002", "SLP-1003", "SLP-1004"], pads.Select(p => p.GetProperty("serial_number").GetString()));
        Assert.All(pads, p => Assert.Equal("live", p.GetProperty("state").GetString()));
        Assert.All(pads, p => Assert.False(p.TryGetProperty("zero", out _)));
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task B_without_a_zero_there_are_no_loads()
    {
        var lines = await Watch(1);
        Assert.All(lines, l => Assert.Equal("incomplete", l.GetProperty("reading").GetProperty("verdict").GetString()));
        Assert.All(lines, l => Assert.All(l.GetProperty("reading").GetProperty("corners").EnumerateObject(), c => Assert.False(c.Value.TryGetProperty("load_kg", out _))));
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task C_zero_of_empty_pads_is_taken_under_the_name_given()
    {
        var (code, output, _) = await bay.Run("zero", "--who", "test crew", "--json");
        // A pad that is not at rest yet refuses, and is asked again as people do.
        for (var tries = 1; code != 0 && tries < 5; tries++)
            (code, output, _) = await bay.Run("zero", "--who", "test crew", "--json");
        using var json = JsonDocument.Parse(output);
        Assert.Equal(0, code);
        Assert.Equal(4, json.RootElement.GetProperty("results").GetArrayLength());
        Assert.All(json.RootElement.GetProperty("results").EnumerateArray(), r => Assert.Equal("test crew", r.GetProperty("zero").GetProperty("who").GetString()));
        var (again, text, _) = await bay.Run("zero", "LF");
        Assert.Equal(0, again);
        Assert.Contains("Caution: the pads must be empty", text);
        Assert.Contains("LF zeroed   moved by ", text);
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task D_a_raised_car_is_a_word_and_no_load()
    {
        var (code, output, _) = await bay.Run("watch", "--plain", "--seconds", "1.5");
        Assert.Equal(0, code);
        Assert.Contains("raised: The pads are empty.", output);
        Assert.DoesNotContain("kg", output);
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task E_the_settled_car_weighs_what_it_weighs_within_the_uncertainty_stated()
    {
        await Task.Delay(await bay.Bay.Car.Lower(Cancel), Cancel);
        await Task.Delay(await bay.Bay.Car.Settle(1.5, roll: true, Cancel), Cancel);
        var settled = await bay.Settled(_ => true);
        var total = settled.GetProperty("total_kg");
        Assert.InRange(total.GetProperty("estimate").GetDouble() - TotalKg, -2 * total.GetProperty("expanded_uncertainty").GetDouble(), 2 * total.GetProperty("expanded_uncertainty").GetDouble());
        Assert.Equal("high", settled.GetProperty("aim").GetString());
        Assert.All(settled.GetProperty("corners").EnumerateObject(), c => Assert.False(c.Value.GetProperty("calibrated").GetBoolean()));
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task Eb_the_balance_tells_start_and_finish_with_each_driver_and_the_class_minimum()
    {
        await bay.Settled(_ => true);
        var (code, output, error) = await bay.Run("car", "balance", "--json");
        Assert.True(code == 0, output + error);
        using var json = JsonDocument.Parse(output);
        var cases = json.RootElement.GetProperty("cases").EnumerateArray().ToList();
        var total = json.RootElement.GetProperty("figures").GetProperty("total_kg").GetProperty("estimate").GetDouble();
        Assert.Equal(["FUEL_LEVEL_START", "FUEL_LEVEL_FINISH", "FUEL_LEVEL_START", "FUEL_LEVEL_FINISH"], cases.Select(c => c.GetProperty("fuel").GetString()));
        // docs/cars/heron.json: 25 litres weighed, 6 at the finish, 0.745 kg each; the second driver is 9 kg lighter.
        var finish = cases[3].GetProperty("figures").GetProperty("total_kg").GetProperty("estimate").GetDouble();
        Assert.Equal(total - 19 * 0.745 - 9, finish, 1e-6);
        Assert.Equal(finish - 1015, json.RootElement.GetProperty("class_standing").GetProperty("over_kg").GetDouble(), 1e-6);
        await bay.Settled(_ => true);
        var (_, text, _) = await bay.Run("car", "balance", "--left-side-weight", "50");
        foreach (var part in new[] { "equal front loads", "ballast: ", "into passenger floor", "start, first driver", "Lightest state (finish, second driver)", "over the minimum of 1015 kg", "Not approved for trade" })
            Assert.Contains(part, text);
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task F_zero_under_a_car_is_refused_with_the_reason_and_exit_code_1()
    {
        var (code, output, _) = await bay.Run("zero", "RR");
        Assert.Equal(1, code);
        Assert.Matches(@"RR refused  .* \(SL-318\)", output);
        Assert.Contains("Take everything off the pad.", output);
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task G_the_picture_is_live_and_gives_the_terminal_back()
    {
        var output = new StringWriter();
        var code = await CommandLine.Run(["watch", "--seconds", "2", "--daemon", bay.Address], Shells.Terminal(output), Cancel);
        Assert.Equal(0, code);
        Assert.StartsWith("\e[?1049h\e[?25l", output.ToString());
        Assert.EndsWith("\e[?25h\e[?1049l", output.ToString());
        Assert.Contains("LIVE", output.ToString());
        Assert.Contains("RF+LR", output.ToString());
        Assert.Contains("LF live 3", output.ToString());
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task H_the_pages_port_is_told_apart_from_the_gRPC_port()
    {
        var error = new StringWriter();
        var code = await CommandLine.Run(["pads", "--daemon", $"http://127.0.0.1:{bay.Bay.Ports.Page}"], Shells.Redirected(error: error), Cancel);
        Assert.Equal(2, code);
        Assert.Contains("SL-422", error.ToString());
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task I_the_last_seconds_of_one_link_are_written_and_copied()
    {
        var folder = Directory.CreateTempSubdirectory("scalelink-record-");
        var (code, output, _) = await bay.Run("record", "LF", "--note", "on the lift", "--seconds", "2", "--out", folder.FullName, "--json");
        Assert.Equal(0, code);
        using var json = JsonDocument.Parse(output);
        var name = Assert.Single(json.RootElement.GetProperty("recordings").EnumerateArray()).GetProperty("name").GetString()!;
        var copy = File.ReadAllText(Path.Combine(folder.FullName, name));
        Assert.Contains("note: on the lift\n", copy);
        Assert.Contains(" received ", copy);

        (code, output, _) = await bay.Run("record", "--list");
        Assert.Equal(0, code);
        Assert.Contains(name, output);
        folder.Delete(recursive: true);
        (code, _, var error) = await bay.Run("record", "--list", "--out", "/dev/null/recordings");
        Assert.Equal(2, code);
        Assert.Contains("SL-445", error);
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task K_a_setup_sheet_goes_from_the_car_file_to_the_next_event()
    {
        var heron = Shared.RepositoryRoot.File("docs", "cars", "heron.json");
        Assert.Equal(0, (await bay.Run("car", "use", heron, "--who", "crew")).Code);
        Assert.Contains("Nobody has said how Heron is set up", (await bay.Run("sheet", "now")).Output);
        Assert.Contains("version 1, on the car", (await bay.Run("sheet", "set", "--track", "Bramble Moor", "--driver", "first driver", "--from", heron, "tyres.pressure_cold.all=22 psi", "--who", "crew")).Output);
        Assert.Contains("version 2, on the car", (await bay.Run("sheet", "set", "springs.rate.front=400 lb/in", "--who", "crew")).Output);
        Assert.Contains("Pressure cold                        1.517 bar", (await bay.Run("sheet", "show")).Output);
        Assert.Contains("70 N/mm -> 70.05 N/mm", (await bay.Run("sheet", "diff")).Output);
        // Every mistake, and nothing is on record.
        var (code, _, error) = await bay.Run("sheet", "set", "springs.rate.front=70,5", "sprngs.rate.LF=3", "--who", "crew");
        Assert.Equal(2, code);
        Assert.Contains("SL-613", error);
        Assert.Contains("SL-612", error);
        Assert.Contains("SL-611", (await bay.Run("sheet", "set", "fuel.fill=20", "--seen", "1", "--who", "crew")).Error);
        Assert.Contains("Long Fen, first driver: version 1, not on the car", (await bay.Run("sheet", "copy", "--to-track", "Long Fen", "--who", "crew")).Output);
        Assert.Contains("version 1, on the car", (await bay.Run("sheet", "fit", "--track", "Long Fen", "--who", "crew")).Output);
        var (_, versions, _) = await bay.Run("sheet", "versions", "--track", "Bramble Moor", "--json");
        using var json = JsonDocument.Parse(versions);
        Assert.Equal(2, json.RootElement.GetProperty("total").GetInt32());
        var (_, printed, _) = await bay.Run("sheet", "print", "--format", "json", "--out", "-");
        Assert.Equal(70.05, ScaleLink.Weighing.Cars.Files.CarFile.Read(printed).Car!.Suspension.LF.SpringRateNPerMm.Estimate, 0.01);
    }

    [Fact(Skip = Skip, SkipUnless = nameof(Can))]
    public async Task J_the_first_weighing_of_a_pad_interchange_is_kept_and_what_comes_next_is_said()
    {
        Assert.Contains("The pads are not being interchanged", (await bay.Run("calibrations", "pad-interchange", "show")).Output);
        await bay.Stands();
        // A car that moves in the moment of the question is waited for once more. Busy machines lose blocks, and rest has to be seen anew.
        var asked = 0;
        var second = await SettledWait.Ask(bay.Bay.Daemon, TimeProvider.System, 150, _ => ++asked > 1
            ? Task.FromResult(asked)
            : throw new ClientException(new Diagnostic(SessionCodes.NotReady, "It moved.", "Wait.")), Cancel);
        Assert.Equal(2, second);
        // The car still rocks a little.
        await bay.Bay.Car.Settle(1.5, roll: true, Cancel);
        var (code, output, error) = await bay.Run("calibrations", "pad-interchange", "record", "--who", "test crew", "--wait", "150");
        Assert.True(code == 0, output + error);
        Assert.Contains("Caution: Support a raised car on axle stands", output);
        Assert.Contains("Next: SLP-1002 to LF, SLP-1003 to RF, SLP-1004 to LR, SLP-1001 to RR.", output);

        var again = await bay.Run("calibrations", "pad-interchange", "record");
        Assert.Equal(2, again.Code);
        Assert.Contains("SL-322", again.Error);
        using var json = JsonDocument.Parse((await bay.Run("calibrations", "pad-interchange", "show", "--json")).Output);
        Assert.Equal("INTERCHANGE_STATE_MEASURING", json.RootElement.GetProperty("state").GetString());
        Assert.Equal(TotalKg, json.RootElement.GetProperty("placements")[0].GetProperty("pads").EnumerateArray().Sum(p => p.GetProperty("load_kg").GetDouble()), 10.0);
        Assert.Contains("SL-326", (await bay.Run("calibrations", "pad-interchange", "finish")).Error);

        var id = json.RootElement.GetProperty("interchange_id").GetString()!;
        var csv = (await bay.Run("calibrations", "pad-interchange", "export", id, "--format", "csv", "--out", "-")).Output;
        Assert.Equal(4, csv.Split("\r\n").Count(l => l.StartsWith("1,", StringComparison.Ordinal)));
        Assert.Contains("not approved for trade weighing", (await bay.Run("calibrations", "pad-interchange", "export", id, "--out", "-")).Output);
        output = (await bay.Run("calibrations", "pad-interchange", "abandon", "pads are wanted elsewhere")).Output;
        Assert.Contains("abandoned", output);
        Assert.DoesNotContain("pad interchange record", output);
        Assert.Contains("abandoned", (await bay.Run("calibrations", "pad-interchange", "list")).Output);
    }

    private async Task<List<JsonElement>> Watch(double seconds)
    {
        var (code, output, _) = await bay.Run("watch", "--json", "--seconds", $"{seconds}");
        Assert.Equal(0, code);
        // Until the first message the line says absent.
        var lines = output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => JsonDocument.Parse(l).RootElement).SkipWhile(l => l.GetProperty("state").GetString() == "absent").ToList();
        Assert.NotEmpty(lines);
        Assert.All(lines, l => Assert.Equal("live", l.GetProperty("state").GetString()));
        return lines;
    }
}
