using Board.Tests.Pages;
using ScaleLink.Api.V1;

namespace Board.Tests.SetupSheets;

/// <summary>Setup sheets by clicks, against the same daemon's answers: a first sheet, a second version, another device that was quicker, a copy that is fitted.</summary>
[Collection(SharedBayTests.Name)]
public class SetupSheetPageTests(SharedBay bay)
{
    private const string Long = "A circuit with a name that is much longer than anybody would write on paper";

    [Fact]
    public async Task A_sheet_is_filled_in_changed_overtaken_copied_and_fitted()
    {
        var (sheets, control) = (bay.Rig.Daemon.SetupSheets, bay.Rig.Daemon.SetupSheetControl);
        bay.Rig.Daemon.CarControl.SaveCar(new SaveCarRequest { File = File.ReadAllText(Heron.File), Who = "crew" }, cancellationToken: TestContext.Current.CancellationToken);
        bay.Rig.Daemon.CarControl.UseCar(new UseCarRequest { Name = "Heron", Who = "crew" }, cancellationToken: TestContext.Current.CancellationToken);
        var key = new SheetKey { Car = "Heron", Track = "Bramble Moor", Driver = "first driver" };
        var board = await bay.Show(new PageSetup { Path = "setup-sheet", Width = 390, Height = 844 });
        await board.Has(".setup-sheet[data-sheet=none] [data-part=springs]");
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator("[name=track]").FillAsync("Bramble Moor");
        await board.Page.Locator("[name=driver]").FillAsync("first driver");
        await Fill(board, "springs", "springs.rate.LF", "70,5");
        await board.Page.Locator("[data-do=save-sheet-version]:not([disabled])").ClickAsync();
        await board.Has(".setup-sheet > .trouble-note .refusal");
        Assert.Contains("70.5", await board.Text(".setup-sheet > .trouble-note .refusal"));
        // What was typed stands, and is corrected.
        await Fill(board, "springs", "springs.rate.LF", "400 lb/in");
        await Fill(board, "tyres", "tyres.set", "A");
        await board.Page.Locator("[name=\"ballast.fitted-place\"]").EvaluateAsync("e => e.closest('details').open = true");
        await board.Page.Locator("[name=\"ballast.fitted-place\"]").FillAsync("battery box");
        await board.Page.Locator("[name=\"ballast.fitted-held\"]").FillAsync("5");
        await board.Page.Locator("[data-do=save-sheet-version]:not([disabled])").ClickAsync();
        await board.Until("document.querySelector('.setup-sheet').dataset.sheet === 'Bramble Moor/first driver/1'");
        var saved = sheets.GetSheet(new GetSheetRequest { Key = key }, cancellationToken: TestContext.Current.CancellationToken);
        // What the car file states is on it too; what was typed goes over it.
        Assert.Equal(["springs.rate.LF", "springs.rate.RF"], saved.Values.Select(v => v.Slot).Take(2));
        Assert.Equal((70, "A", 5), (saved.Values[1].Number, saved.Values.Single(v => v.Slot == "tyres.set").Text, saved.Values.Single(v => v.Slot == "ballast.fitted.battery box").Number));
        Assert.Equal((70.0507, true, "Ada"), (Math.Round(saved.Values[0].Number, 4), saved.OnCar, saved.Who));
        Assert.Equal("Bramble Moor, first driver, version 1", await board.Text("[data-value=on-car]"));

        // Another device is quicker.
        control.SaveSheet(new SaveSheetRequest { Key = key, SeenVersion = 1, Who = "Ben", Changes = { new SheetChange { Slot = "fuel.fill", Value = "31" } } }, cancellationToken: TestContext.Current.CancellationToken);
        await Fill(board, "tyres", "tyres.set", "B");
        await board.Page.Locator("[data-do=save-sheet-version]:not([disabled])").ClickAsync();
        await board.Has("[data-do=reload]");
        Assert.Contains("by Ben", await board.Text(".setup-sheet > .trouble-note .refusal"));
        await board.Page.Locator("[data-do=reload]").ClickAsync();
        await board.Until("document.querySelector('.setup-sheet').dataset.sheet === 'Bramble Moor/first driver/2'");
        Assert.Equal("B", await board.Page.Locator("[name=\"tyres.set\"]").InputValueAsync());
        await board.Page.Locator("[data-do=save-sheet-version]:not([disabled])").ClickAsync();
        await board.Until("document.querySelector('.setup-sheet').dataset.sheet === 'Bramble Moor/first driver/3'");
        await board.Has("[data-differences='1'] [data-changed='tyres.set']");

        await board.Page.Locator("[name=copy-track]").EvaluateAsync("e => e.closest('details').open = true");
        await board.Page.Locator("[name=copy-track]").FillAsync(Long);
        await board.Page.Locator("[data-do=copy-sheet]:not([disabled])").ClickAsync();
        await board.Until($"document.querySelector('.setup-sheet').dataset.sheet === '{Long}/first driver/1'");
        Assert.Equal("Bramble Moor, first driver, version 3", await board.Text("[data-value=on-car]"));
        await board.Page.Locator("[data-do=fit]:not([disabled])").ClickAsync();
        await board.Until($"document.querySelector('[data-value=on-car]').textContent.startsWith('{Long}')");
        Assert.Equal(Long, sheets.GetSheetNow(new GetSheetNowRequest(), cancellationToken: TestContext.Current.CancellationToken).Sheet.Key.Track);
        await board.Page.Locator("[data-part=springs]").EvaluateAsync("e => e.open = true");
        await Look.AtAllSizes(board, "setup-sheet");
        Assert.Empty(board.Errors);
    }

    private static async Task Fill(BoardPage board, string part, string slot, string text)
    {
        await board.Page.Locator($"[data-part={part}]").EvaluateAsync("e => e.open = true");
        await board.Page.Locator($"[name=\"{slot}\"]").FillAsync(text);
    }
}
