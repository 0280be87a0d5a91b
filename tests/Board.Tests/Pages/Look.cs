using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Shared;

namespace Board.Tests.Pages;

/// <summary>Takes a picture of what stands on the board, and finds what is cut off or covered in it.</summary>
internal static class Look
{
    private static readonly (int Width, int Height)[] Sizes = [(390, 844), (1280, 800), (1920, 1080)];

    /// <summary>On a phone, a desk and a large screen, in light and dark, without leaving the view.</summary>
    public static async Task AtAllSizes(BoardPage board, string name)
    {
        foreach (var (width, height) in Sizes)
        {
            foreach (var isDark in new[] { false, true })
            {
                await board.Resize(width, height, isDark);
                await At(board, name, isDark);
            }
        }

        await board.Resize(Sizes[1].Width, Sizes[1].Height, isDark: false);
    }

    /// <summary>axe-core's rules: WCAG 2.1 A and AA and best practice.</summary>
    public static async Task AxeFindsNothing(BoardPage board, int tries = 1)
    {
        var result = await board.Page.RunAxe();
        for (var tried = 1; result.Violations.Length > 0 && tried < tries; tried++)
            result = await board.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {string.Join(" | ", v.Nodes.Select(n => n.Html))}"));
    }

    public static async Task At(BoardPage board, string name, bool isDark)
    {
        var size = board.Page.ViewportSize!;
        var file = RepositoryRoot.File("artifacts", "screenshots", $"{name}-{size.Width}x{size.Height}-{(isDark ? "dark" : "light")}.png");
        await board.Page.ScreenshotAsync(new PageScreenshotOptions { Path = file, FullPage = name is not ("wall" or "live") });
        var wrong = await board.Page.EvaluateAsync<string[]>(Sight.CutOrCovered);
        Assert.True(wrong.Length == 0, $"{name} {size.Width}x{size.Height}: {string.Join("; ", wrong)}");
        Assert.Empty(board.Errors);
    }
}
