using Board.Tests.Pages;
using Microsoft.Playwright;

namespace Board.Tests;

/// <summary>The page for those who do not see, or have no mouse. Source of the rules: axe-core's, which check WCAG 2.1 A and AA and best practice.</summary>
[Collection(SharedBayTests.Name)]
public class AccessTests(SharedBay bay)
{
    [Theory]
    [MemberData(nameof(Views.Each), MemberType = typeof(Views))]
    public async Task Axe_finds_nothing_in_light_and_dark(string path)
    {
        var board = await bay.Show(new PageSetup { Path = path });
        if (await board.Page.Locator("[data-do=ask-zero]").CountAsync() > 0)
            await board.Page.Locator("[data-do=ask-zero]").ClickAsync();
        await Unfold(board);
        await Look.AxeFindsNothing(board);
        await board.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        await Look.AxeFindsNothing(board);
    }

    [Theory]
    [MemberData(nameof(Views.Each), MemberType = typeof(Views))]
    public async Task The_keyboard_alone_reaches_everything_that_can_be_done(string path)
    {
        var board = await bay.Show(new PageSetup { Path = path });
        await Unfold(board);
        // A group of radio buttons is one stop; its arrows do the rest.
        var wanted = await board.Page.EvaluateAsync<string[]>(Sight.Doable);
        await board.Page.EvaluateAsync("document.activeElement.blur()");
        var reached = new HashSet<string>();
        // What scrolls is a stop too, and the way may begin in the middle of the page.
        for (var presses = 0; presses < 2 * wanted.Length + 10; presses++)
        {
            await board.Page.Keyboard.PressAsync("Tab");
            reached.Add(await board.Page.EvaluateAsync<string>(Sight.Focused));
        }

        Assert.Empty(wanted.Except(reached));
    }

    private static async Task Unfold(BoardPage board)
    {
        if (await board.Page.Locator(".calibration").CountAsync() > 0)
            await board.Has(".older");
        await board.Page.EvaluateAsync(Sight.Unfold);
        if (await board.Page.Locator("[name=height-measurement-by]").CountAsync() > 0)
            await board.Has("[name=difference-0]");
        if (await board.Page.Locator(".older").CountAsync() > 0)
            await board.Has(".older li");
    }

    [Fact]
    public async Task Enter_follows_a_link_and_space_presses_a_button()
    {
        var board = await bay.Show();
        await board.Page.Locator("nav a[href=health]").FocusAsync();
        await board.Page.Keyboard.PressAsync("Enter");
        await board.Page.Locator("[data-do=ask-zero]:not([disabled])").WaitForAsync();
        Assert.Equal("H1", await board.Page.EvaluateAsync<string>("document.activeElement.tagName"));
        await board.Page.Locator("[data-do=ask-zero]").FocusAsync();
        await board.Page.Keyboard.PressAsync("Space");
        await board.Until("document.activeElement?.dataset.do === 'who'");
    }
}
