using Microsoft.Net.Http.Headers;

namespace ScaleLink.Daemon.Faces.Page;

/// <summary>The board: a static page. Every address without a file behind it is one of its views.</summary>
internal static class BoardPages
{
    // Without this a browser may keep yesterday's page after an update; the files behind it carry their own marks.
    private static readonly StaticFileOptions AlwaysAsk = new() { OnPrepareResponse = file => file.Context.Response.Headers[HeaderNames.CacheControl] = "no-cache" };

    public static void MapBoard(this WebApplication app)
    {
        app.MapStaticAssets();
        app.MapGet("/opening", (OpeningPage page, HttpContext context, string? unit, string? length) => page.Draw(context, unit, length));
        app.MapFallbackToFile("index.html", AlwaysAsk);
    }

    /// <summary>While a bay is set up there is one view; whoever asks for another is led to it.</summary>
    public static void MapSetupBoard(this WebApplication app)
    {
        app.MapStaticAssets();
        app.MapGet("/opening", () => Results.Text("<main class=\"notice\"><h1>ScaleLink</h1><p>Opening the guide.</p></main>", "text/html"));
        app.MapFallbackToFile("/setup", "index.html", AlwaysAsk);
        app.MapFallback(() => Results.Redirect("/setup"));
    }
}
