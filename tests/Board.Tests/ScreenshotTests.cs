using Board.Tests.Pages;

namespace Board.Tests;

/// <summary>Pictures of the views for people to look at, and what a machine can see in them: nothing cut off, nothing on top of something else.</summary>
[Collection(SharedBayTests.Name)]
public class ScreenshotTests(SharedBay bay)
{
    [Theory]
    [MemberData(nameof(Views.Each), MemberType = typeof(Views))]
    public async Task Nothing_is_cut_off_or_covered(string path)
    {
        var board = await bay.Show(new PageSetup { Path = path });
        await Look.AtAllSizes(board, path.Length > 0 ? path : "live");
    }

    [Fact]
    public async Task On_the_wall_digits_are_8_percent_of_the_height_of_the_screen()
    {
        const int height = 1080;
        await using var board = await bay.Open("?big=on");
        foreach (var isDark in new[] { false, true })
        {
            await board.Show(new PageSetup { Width = 1920, Height = height, IsDark = isDark });
            await Look.At(board, "wall", isDark);
        }

        foreach (var selector in new[] { "[data-value=cross]", "[data-corner=LF] [data-value=load]", "[data-corner=RR] [data-value=load]" })
            Assert.InRange(await board.Page.EvaluateAsync<double>(Sight.DigitHeight, selector) / height, 0.08, 0.3);
    }
}
