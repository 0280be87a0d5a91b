using System.Globalization;
using Microsoft.Playwright;

namespace Board.Tests.Pages;

/// <summary>One open board, and what stands on it.</summary>
internal sealed class BoardPage : IAsyncDisposable
{
    // For what has to happen, and is not judged by when.
    private const double Patience = 60;
    private const double PressedWithin = 10;

    private readonly IBrowserContext _context;

    private BoardPage(IBrowserContext context, IPage page) => (_context, Page) = (context, page);

    public IPage Page { get; }

    /// <summary>Errors that scripts of the page have thrown.</summary>
    public List<string> Errors { get; } = [];

    /// <summary>Where the device is: in another zone than the daemon, with minutes beside the whole hours.</summary>
    public const string Zone = "America/St_Johns";

    /// <summary>What the browser has written into its console; a daemon that is away is among it.</summary>
    public List<string> Complaints { get; } = [];

    /// <param name="browser">The browser.</param>
    /// <param name="address">Where the page is.</param>
    /// <param name="prepare">Done before the page is called for; what has to hold before its own code runs.</param>
    /// <param name="isStarted">Whether to wait until the page's own code runs.</param>
    public static async Task<BoardPage> Open(IBrowser browser, string address, Func<IPage, Task>? prepare = null, bool isStarted = true)
    {
        var context = await browser.NewContextAsync(new BrowserNewContextOptions { ReducedMotion = ReducedMotion.Reduce, TimezoneId = Zone });
        context.SetDefaultTimeout((float)(1000 * Patience));
        var board = new BoardPage(context, await context.NewPageAsync());
        board.Page.Console += (_, message) =>
        {
            if (message.Type == "error")
                board.Complaints.Add(message.Text);
        };
        board.Page.PageError += (_, error) => board.Errors.Add(error);
        if (prepare is not null)
            await prepare(board.Page);
        await board.Page.GotoAsync(address, new PageGotoOptions { WaitUntil = WaitUntilState.DOMContentLoaded });
        if (isStarted)
            await board.Started();
        return board;
    }

    /// <summary>Loads the page anew.</summary>
    public async Task Reload()
    {
        await Page.ReloadAsync();
        await Started();
    }

    /// <summary>Takes the size, the theme and the view that are asked for.</summary>
    public async Task Show(PageSetup setup)
    {
        Errors.Clear();
        await Resize(setup.Width, setup.Height, setup.IsDark);
        await Go(setup.Path);
    }

    /// <summary>Takes another size and theme without leaving the view.</summary>
    public async Task Resize(int width, int height, bool isDark)
    {
        await Page.SetViewportSizeAsync(width, height);
        await Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light, ReducedMotion = ReducedMotion.Reduce });
    }

    /// <summary>Follows the link to a view, and waits until the bay stands on it.</summary>
    public async Task Go(string path)
    {
        await Page.Locator($"nav a[href='{path}']").ClickAsync();
        if (path.Length == 0)
            await UntilVerdict("settled");
        else if (path == "health")
            await Until("document.querySelectorAll('[data-pad] [data-state=live]').length === 4");
        else
            await Page.Locator($".{path}").WaitForAsync();
    }

    /// <summary>Freshness as the page tells it: live, held or absent.</summary>
    public Task<string> Freshness() => Attribute("[data-freshness]", "data-freshness");

    /// <summary>Verdict of a live reading; empty without one.</summary>
    public Task<string> Verdict() => Attribute("[data-verdict]", "data-verdict");

    /// <summary>State of the session on the work view.</summary>
    public Task<string> StateName() => Attribute(".work-session", "data-state");

    public async Task<string> Text(string selector) => (await Page.Locator(selector).First.InnerTextAsync()).Trim();

    /// <summary>The number that stands at the selector; nothing where none stands.</summary>
    public async Task<double?> Number(string selector) =>
        double.TryParse((await Text(selector)).Split(' ', '\n')[0].Replace('\u2212', '-').TrimStart('~'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    public Task<double?> Load(string corner) => Number($"[data-corner={corner}] [data-value=load]");

    /// <summary>Waits for a condition on the document, in JavaScript, and gives the time it took.</summary>
    public async Task<TimeSpan> Until(string condition, double withinSeconds = Patience)
    {
        var started = System.Diagnostics.Stopwatch.GetTimestamp();
        try
        {
            await Page.WaitForFunctionAsync(condition, null, new PageWaitForFunctionOptions { Timeout = (float)(1000 * withinSeconds), PollingInterval = 20 });
        }
        catch (TimeoutException e)
        {
            var seen = await Page.Locator("body").InnerTextAsync();
            throw new TimeoutException($"Not within {withinSeconds} s: {condition}. The page says: {seen} {string.Join(' ', Errors.Concat(Complaints.TakeLast(5)))}", e);
        }

        return System.Diagnostics.Stopwatch.GetElapsedTime(started);
    }

    /// <summary>Waits until something stands at the selector.</summary>
    public Task<TimeSpan> Has(string selector, double withinSeconds = Patience) => Until($"document.querySelector(`{selector}`)", withinSeconds);

    /// <summary>Chooses a file where one is asked for, once the framework's script listens there: the field is drawn a moment earlier.</summary>
    public async Task Choose(string field, FilePayload file) => await (await Listening(field)).SetInputFilesAsync(file);

    /// <inheritdoc cref="Choose(string, FilePayload)"/>
    public async Task Choose(string field, string path) => await (await Listening(field)).SetInputFilesAsync(path);

    private async Task<ILocator> Listening(string field)
    {
        await Until($"document.querySelector(`{field}`)?._blazorInputFileNextFileId !== undefined");
        return Page.Locator(field);
    }

    /// <summary>Presses a button until something is there: one that goes grey in the very moment of the press, because the car moves, takes none.</summary>
    public async Task Press(string button, string until)
    {
        for (var tries = 1; tries < 4; tries++)
        {
            await Page.Locator(button).ClickAsync();
            try
            {
                await Has(until, PressedWithin);
                return;
            }
            catch (TimeoutException)
            {
                // Pressed again.
            }
        }

        await Has(until);
    }

    public Task<TimeSpan> UntilVerdict(string verdict, double withinSeconds = Patience) =>
        Until($"document.querySelector('[data-verdict]')?.dataset.verdict === '{verdict}'", withinSeconds);

    public Task<TimeSpan> UntilFreshness(string freshness, double withinSeconds) =>
        Until($"document.querySelector('[data-freshness]')?.dataset.freshness === '{freshness}'", withinSeconds);

    /// <summary>Waits until the page's own code runs and has taken the place of what the daemon drew.</summary>
    public Task Started() => Page.Locator("body:not(:has(.opening)) h1").First.WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });

    public async ValueTask DisposeAsync() => await _context.DisposeAsync();

    private async Task<string> Attribute(string selector, string name) => await Page.Locator(selector).First.GetAttributeAsync(name) ?? "";
}
