using System.Globalization;
using System.Text.RegularExpressions;
using Board.Tests.Pages;
using ScaleLink.Api.V1;

namespace Board.Tests.Calibration;

/// <summary>Calibrations of a pad by clicks; the simulator lifts the masses that the page asks for.</summary>
[Collection(CalibrationBayTests.Name)]
public class CalibrationPageTests(SharedBay bay)
{
    private const string Corner = "LR";

    [Fact]
    public async Task A_pad_is_calibrated_by_clicks_from_the_list_of_masses_to_the_report_and_goes_back_to_an_older_calibration()
    {
        await using var bench = new CalibrationBench(bay, Corner);
        var board = await bench.Open();
        // What there is to lift and what will come out of it stands there before anything is begun; one mass alone could never do.
        await board.Page.Locator("[name=pieces-0]").FillAsync("1");
        await board.Has("[data-planned=refused]");
        Assert.Contains("SL-314", await board.Text(".planned"));
        await board.Page.Locator("[name=pieces-0]").FillAsync("8");
        await board.Page.Locator("[name=kg-0]").FillAsync("50");
        await board.Has("[data-planned=good]");
        Assert.Matches("Short plan\\. 3 loads to 400 kg in 10 steps: 32 lifts, on and off, 1600 kg in all\\. Foreseen: ±0\\.\\d\\d kg", await board.Text(".planned"));
        await ListMasses(board, runs: 1, preloads: 1);
        await board.Page.Locator(".extras summary").ClickAsync();
        // More than there are: the page says what it needs before anybody lifts.
        await board.Page.Locator("[name=spot-pieces]").FillAsync("4");
        Assert.Contains("3 pieces", await board.Text("[data-value=lacking]"));
        await board.Page.Locator("[name=spot-pieces]").FillAsync("1");
        await Look.AtAllSizes(board, "calibrate-start");
        await board.Page.Locator("[data-do=start-procedure]:not([disabled])").ClickAsync();
        await board.Has(".step");
        Assert.Contains("Caution", await board.Text(".step .caution"));
        Assert.Contains("lifts left", await board.Text("[data-value=left-to-lift]"));
        await Look.AtAllSizes(board, "calibrate-step");
        var steps = await bench.ReadAllPoints();
        Assert.Contains(steps, s => s.Told.Contains("(SL-3", StringComparison.Ordinal));
        EverySpotIsNamed(steps);

        Assert.Equal("good", await board.Page.Locator(".result").GetAttributeAsync("data-result"));
        Assert.InRange(await board.Page.Locator(".residuals .up, .residuals .down").CountAsync(), 6, 40);
        Assert.Equal(2, await board.Page.Locator(".residuals .limit").CountAsync());
        Assert.Equal(1, await board.Page.Locator(".residuals .band").CountAsync());
        Assert.Matches("^Good to 150 kg within ±", await board.Text("[data-value=conclusion]"));
        Assert.Contains("apart", await board.Text("[data-value=trim]"));
        await Look.AtAllSizes(board, "calibrate-result");
        await Adopt(board);
        var download = await board.Page.RunAndWaitForDownloadAsync(() => board.Page.Locator("[data-do=save-report]").ClickAsync());
        Assert.Contains("<svg", await File.ReadAllTextAsync((await download.PathAsync())!, TestContext.Current.CancellationToken));
        Assert.True(bay.Rig.Daemon.Pad(Corner).Calibrated);

        var first = bay.Rig.Daemon.Pad(Corner).Calibration;
        await ShortProcedure(bench);
        await Adopt(board);
        await GoBackTo(board, first);
        Assert.Empty(board.Errors);
    }

    [Fact]
    public async Task A_calibration_procedure_that_misses_the_uncertainty_asked_for_says_so_and_is_rejected()
    {
        await using var bench = new CalibrationBench(bay, Corner);
        var board = await bench.Open();
        await ListMasses(board, runs: 1, preloads: 0);
        await board.Page.Locator("[name=way-down]").UncheckAsync();
        await board.Page.Locator(".extras summary").ClickAsync();
        await board.Page.Locator("[name=asked-within]").FillAsync("0.001");
        Assert.Contains("its load", await board.Text("[data-value=lacking]"));
        await board.Page.Locator("[name=asked-at]").FillAsync("150");
        await board.Page.Locator("[data-do=start-procedure]:not([disabled])").ClickAsync();
        // Three masses of 50 kg, class M1, are within 2.5 g each (OIML R 111-1:2004, table 1): no number of runs gets under what they leave.
        await board.Has(".procedure .refusal");
        Assert.Contains("SL-315", await board.Text(".procedure .refusal"));

        // Above that the page says what is usual for a pad and no reading can take away; a hair above it no procedure comes in which a piece is 50 g too heavy.
        await board.Page.Locator("[name=asked-within]").FillAsync("0.0086");
        await board.Until("document.querySelector('.planned')?.textContent.includes('usual for a pad')");
        var floor = Regex.Match(await board.Text(".planned"), @"leave ±(\d\.\d{3}) kg").Groups[1].Value;
        var asked = double.Parse(floor, CultureInfo.InvariantCulture) + 0.0006;
        await board.Page.Locator("[name=asked-within]").FillAsync(asked.ToString(CultureInfo.InvariantCulture));
        await board.Page.Locator("[data-do=start-procedure]:not([disabled])").ClickAsync();
        await board.Has(".step");
        await bench.ReadAllPoints(wrongAt: 100, wrongKg: 0.05);
        Assert.Equal("refused", await board.Page.Locator(".result").GetAttributeAsync("data-result"));
        Assert.Contains(FormattableString.Invariant($"{asked:0.000} kg asked"), await board.Text(".result .findings"));
        Assert.Equal(1, await board.Page.Locator("[data-do=adopt][disabled]").CountAsync());
        await Look.AtAllSizes(board, "calibrate-missed");
        await board.Page.Locator("[name=decision-note]").FillAsync("misses what was asked");
        await board.Page.Locator("[data-do=reject]:not([disabled])").ClickAsync();
        await board.Has("[data-procedure=rejected] [data-value=ending]");
        Assert.Contains("misses what was asked", await board.Text("[data-value=ending]"));
    }

    [Fact]
    public async Task A_pad_that_carries_something_is_read_as_empty_only_with_the_reason()
    {
        await using var bench = new CalibrationBench(bay, Corner);
        var board = await bench.Open();
        bench.Put(20, "");
        await ListMasses(board, runs: 1, preloads: 0);
        await board.Page.Locator("[data-do=start-procedure]:not([disabled])").ClickAsync();
        await board.Has(".step[data-step='1'] [name=empty-because]");
        Assert.Contains("SL-318", await board.Text(".step .ready"));
        Assert.Equal(1, await board.Page.Locator("[data-do=record][disabled]").CountAsync());
        await board.Page.Locator("[name=empty-because]").FillAsync("a heavier platform");
        await Look.AtAllSizes(board, "calibrate-not-empty");
        await board.Page.Locator("[data-do=say-empty]:not([disabled])").ClickAsync();
        await board.Has(".step[data-step='2']");
    }

    private static void EverySpotIsNamed(IReadOnlyList<ProcedureStepSeen> steps)
    {
        var placed = steps.Where(s => s.Spot.Length > 0).ToList();
        Assert.Equal(["over cell 1", "over cell 2", "over cell 3", "over cell 4", "in the middle"], placed.Select(s => s.Spot));
        Assert.All(placed, s => Assert.Contains(s.Spot, s.Words));
        // Put down first, then only moved: no reading tells that, so the page says who has to.
        Assert.All(placed.Skip(1), s => Assert.Contains("cannot tell", s.WhenReady));
        // The simulator's first cell is under the first spot, and so on: the part that each cell carries tells where the load stands.
        Assert.All(placed.SkipLast(1).Index(), s => Assert.Equal(s.Index, Greatest(s.Item.CellShares)));
    }

    private static int Greatest(string shares)
    {
        List<int> percents = [.. shares.TrimEnd('%', ' ').Split(" + ").Select(s => int.Parse(s.Replace('\u2212', '-'), CultureInfo.InvariantCulture))];
        Assert.InRange(percents.Sum(), 98, 102);
        return percents.IndexOf(percents.Max());
    }

    private static async Task ListMasses(BoardPage board, int runs, int preloads)
    {
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator("[name=pieces-0]").FillAsync("3");
        await board.Page.Locator("[name=kg-0]").FillAsync("50");
        await board.Page.Locator("[name=repetitions]").FillAsync($"{runs}");
        await board.Page.Locator("[name=preloads]").FillAsync($"{preloads}");
    }

    private static async Task ShortProcedure(CalibrationBench bench)
    {
        await ListMasses(bench.Board, runs: 1, preloads: 0);
        await bench.Board.Page.Locator("[name=way-down]").UncheckAsync();
        await bench.Board.Page.Locator("[data-do=start-procedure]:not([disabled])").ClickAsync();
        await bench.Board.Has(".step");
        await bench.ReadAllPoints();
    }

    private static async Task Adopt(BoardPage board)
    {
        await board.Page.Locator("[data-do=adopt]:not([disabled])").ClickAsync();
        await board.Has("[data-procedure=adopted] [data-value=ending]");
        Assert.Contains("Adopted by Ada", await board.Text("[data-value=ending]"));
    }

    private async Task GoBackTo(BoardPage board, string first)
    {
        var newest = bay.Rig.Daemon.Pad(Corner).Calibration;
        Assert.NotEqual(first, newest);
        await board.Page.Locator(".older summary").ClickAsync();
        await board.Has($"[data-calibration='{newest[..8]}'][data-force=yes]");
        // How zero and span have moved, a mark for each calibration, by numbers that the list names too.
        Assert.Equal(2, await board.Page.Locator(".pad-history svg").CountAsync());
        Assert.Equal(2, await board.Page.Locator("[data-history=span] circle").CountAsync());
        Assert.Contains($"No. {await board.Page.Locator("[data-history=zero] .step-label").Nth(1).TextContentAsync()}.", await board.Text($"[data-calibration='{newest[..8]}']"));
        await board.Page.Locator($"[data-calibration='{first[..8]}'] [data-do=ask-readopt]:not([disabled])").ClickAsync();
        await board.Has(".older .confirm table");
        await Look.AtAllSizes(board, "calibrate-older");
        await Look.AxeFindsNothing(board);
        // Which calibration weighs is a matter for the record: no reason, no change.
        Assert.Equal(1, await board.Page.Locator("[data-do=readopt][disabled]").CountAsync());
        await board.Page.Locator("[name=readopt-note]").FillAsync("the newer masses were wet");
        await board.Page.Locator("[data-do=readopt]:not([disabled])").ClickAsync();
        await board.Has($"[data-calibration='{first[..8]}'][data-force=yes]");
        Assert.Contains("In effect again", await board.Text(".older .taken"));
        Assert.Equal(first, bay.Rig.Daemon.Pad(Corner).Calibration);
        var listed = bay.Rig.Daemon.CalibrationProcedures.ListCalibrations(new ListCalibrationsRequest { SerialNumber = bay.Rig.Daemon.Pad(Corner).SerialNumber }, cancellationToken: TestContext.Current.CancellationToken).Calibrations[0];
        Assert.Equal((first, true, "the newer masses were wet"), (listed.Id, listed.Readopted, listed.Note));
    }
}
