using Microsoft.Playwright;
using Shared.Rig;

namespace Board.Tests.Pages;

/// <summary>The Chromium that the machine has, without a window.</summary>
internal sealed class Chromium : IAsyncDisposable
{
    private static readonly string[] Arguments = ["--no-sandbox", "--headless=new", "--disable-gpu", "--disable-background-networking", "--no-first-run"];

    private readonly IPlaywright _playwright;

    private Chromium(IPlaywright playwright, IBrowser browser) => (_playwright, Browser) = (playwright, browser);

    public IBrowser Browser { get; }

    /// <summary>Skips the test where there is none; fails it in CI.</summary>
    public static async Task<Chromium> Start()
    {
        InstalledProgram.Need("chromium");
        var playwright = await Playwright.CreateAsync();
        var browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = InstalledProgram.Path("chromium"), Args = Arguments });
        return new Chromium(playwright, browser);
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        _playwright.Dispose();
    }
}
