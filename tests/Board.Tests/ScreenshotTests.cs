using Board.Tests.Pages;
using Microsoft.Playwright;
using Shared;

namespace Board.Tests;

/// <summary>Pictures of the views for people to look at, and what a machine can see in them: nothing cut off, nothing on top of something else.</summary>
[Collection(SharedBayTests.Name)]
public class ScreenshotTests(SharedBay bay)
{
    public static TheoryData<string, int, int, bool, string> Screens()
    {
        var screens = new TheoryData<string, int, int, bool, string>();
        foreach (var isDark in new[] { false, true })
        {
            screens.Add("phone", 390, 844, isDark, "");
            screens.Add("phone-health", 390, 844, isDark, "health");
            screens.Add("desk", 1280, 800, isDark, "");
            screens.Add("desk-health", 1280, 800, isDark, "health");
            screens.Add("desk-device", 1280, 800, isDark, "device");
            screens.Add("large", 1920, 1080, isDark, "");
        }

        return screens;
    }

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Nothing_is_cut_off_or_covered(string name, int width, int height, bool isDark, string path)
    {
        var board = await bay.Show(new PageSetup { Width = width, Height = height, IsDark = isDark, Path = path });
        await Look(board, name, isDark);
    }

    [Fact]
    public async Task On_the_wall_digits_are_8_percent_of_the_height_of_the_screen()
    {
        const int height = 1080;
        await using var board = await bay.Open("?big=on");
        foreach (var isDark in new[] { false, true })
        {
            await board.Show(new PageSetup { Width = 1920, Height = height, IsDark = isDark });
            await Look(board, "wall", isDark);
        }

        foreach (var selector in new[] { "[data-value=cross]", "[data-corner=LF] [data-value=load]", "[data-corner=RR] [data-value=load]" })
            Assert.InRange(await board.Page.EvaluateAsync<double>(Sight.DigitHeight, selector) / height, 0.08, 0.3);
    }

    private static async Task Look(BoardPage board, string name, bool isDark)
    {
        var size = board.Page.ViewportSize!;
        var file = RepositoryRoot.File("artifacts", "screenshots", $"{name}-{size.Width}x{size.Height}-{(isDark ? "dark" : "light")}.png");
        await board.Page.ScreenshotAsync(new PageScreenshotOptions { Path = file });
        Assert.Empty(await board.Page.EvaluateAsync<string[]>(Sight.CutOrCovered));
        Assert.Empty(board.Errors);
    }
}
