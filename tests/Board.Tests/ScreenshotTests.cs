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
            screens.Add("wall", 1920, 1080, isDark, "");
            screens.Add("wall-normal", 1920, 1080, isDark, "");
        }

        return screens;
    }

    [Theory]
    [MemberData(nameof(Screens))]
    public async Task Nothing_is_cut_off_or_covered(string name, int width, int height, bool isDark, string path)
    {
        await using var board = await bay.Open(new PageSetup { Width = width, Height = height, IsDark = isDark, IsBigScreen = name == "wall", IsPhone = width < 500, Path = path });
        if (path.Length == 0)
            await board.UntilVerdict("settled");
        else if (path == "health")
            await board.Until("document.querySelectorAll('.pad-state.live').length === 4", 20);
        var file = RepositoryRoot.File("artifacts", "screenshots", $"{name}-{width}x{height}-{(isDark ? "dark" : "light")}.png");
        await board.Page.ScreenshotAsync(new PageScreenshotOptions { Path = file });
        Assert.Empty(await board.Page.EvaluateAsync<string[]>(Sight.CutOrCovered));
        Assert.Empty(board.Errors);
    }
}
