using Board.Tests.Pages;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Board.Tests;

/// <summary>The health view, and the zero that is taken from it.</summary>
[Collection(CrewBayTests.Name)]
public class HealthTests(SharedBay bay)
{
    [Fact]
    public async Task Each_pad_tells_its_state_serial_number_and_faults()
    {
        var board = await bay.Show(new PageSetup { Path = "health" });
        foreach (var pad in bay.Rig.Daemon.Pads.ListPads(new ListPadsRequest()).Pads)
            Assert.Contains(pad.SerialNumber, await board.Text($"[data-pad={pad.Corner.ToString().ToUpperInvariant()}]"));

        bay.Rig.Simulator.Do("""{"do":"freeze","corner":"LR","on":true}""");
        await board.Until("document.querySelector('[data-pad=LR] [data-state=silent]')");
        Assert.Contains("SL-106", await board.Text(".faults"));
        bay.Rig.Simulator.Do("""{"do":"freeze","corner":"LR","on":false}""");
        await board.Until("document.querySelectorAll('[data-pad] [data-state=live]').length === 4");
        bay.Rig.Settled();
    }

    [Fact]
    public async Task A_zero_needs_a_name_and_a_second_word_and_is_refused_under_the_car()
    {
        var board = await bay.Show(new PageSetup { Path = "health" });
        var before = Zeros();
        await board.Page.Locator("[data-do=ask-zero]").ClickAsync();
        Assert.Contains("Nobody under a car that hangs on a jack", await board.Text(".zero .caution"));
        // The device remembers a name from another test.
        await board.Page.Locator("[data-do=who]").FillAsync("");
        await board.Page.Locator("[data-do=take-zero]:disabled").WaitForAsync();
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        await board.Page.Locator("[data-do=take-zero]").ClickAsync();
        await board.Page.Locator(".results li").First.WaitForAsync();
        Assert.Equal(4, await board.Page.Locator(".results .refusal").CountAsync());
        Assert.Contains("SL-318", await board.Text(".results"));
        Assert.Equal(before, Zeros());
    }

    [Fact]
    public async Task A_zero_of_empty_pads_is_taken_and_stands_on_every_pad()
    {
        var board = await bay.Show(new PageSetup { Path = "health" });
        bay.Rig.Simulator.DoAndWait("""{"do":"jack","mm":150}""");
        Wait.Until(() => bay.Rig.Daemon.Loads()?.Remark == "The pads are empty.", Wait.Patience, "empty pads");
        await board.Page.Locator("[data-do=ask-zero]:not([disabled])").ClickAsync();
        await board.Page.Locator("[data-do=who]").FillAsync("Ada");
        // A pad that still swings refuses, and is asked again as people do.
        for (var tries = 0; tries < 10 && await board.Page.Locator(".results .taken").CountAsync() < 4; tries++)
        {
            if (await board.Page.Locator("[data-do=take-zero]").CountAsync() == 0)
                await board.Page.Locator("[data-do=ask-zero]:not([disabled])").ClickAsync();
            await board.Page.Locator("[data-do=take-zero]").ClickAsync();
            await board.Page.Locator(".results li").First.WaitForAsync();
        }

        Assert.Equal(4, await board.Page.Locator(".results .taken").CountAsync());
        await board.Until("[...document.querySelectorAll('[data-pad]')].every(p => p.innerText.includes('by Ada'))");
        // In the zone of the device, wherever the daemon is.
        var taken = bay.Rig.Daemon.Pad("LF").Zero.Time.ToDateTimeOffset();
        var (here, offset) = (TimeZoneInfo.ConvertTimeBySystemTimeZoneId(taken, BoardPage.Zone), TimeZoneInfo.FindSystemTimeZoneById(BoardPage.Zone).GetUtcOffset(taken));
        Assert.Contains($"{here:yyyy-MM-dd HH:mm:ss} -{offset:hh\\:mm} by Ada", await board.Text("[data-pad=LF]"));
        bay.Rig.Simulator.DoAndWait("""{"do":"lower"}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","seconds":2}""");
        bay.Rig.Settled();
    }

    private List<string> Zeros() => [.. bay.Rig.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.Select(p => $"{p.Zero?.Counts} {p.Zero?.Who}")];
}
