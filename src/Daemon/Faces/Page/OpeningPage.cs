using Microsoft.Net.Http.Headers;
using ScaleLink.Board.Opening;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Faces.Feed;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.WorkSessions.Service;
using ScaleLink.Measure;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Faces.Page;

/// <summary>The live view as HTML, for a browser whose page is still starting; with it goes the daemon's clock.</summary>
internal sealed class OpeningPage(LiveBay bay, ApiMapping mapping, PadsList pads, SessionAnswer session, BayClock clock)
{
    private const double RateHz = 10;

    public async Task<IResult> Draw(HttpContext context, string? unit, string? length)
    {
        var now = new Wire.GetClockResponse { MonotonicNs = clock.NowNs, StartId = clock.StartId };
        var loads = bay.Newest is { } reading ? mapping.Loads(reading, new Pace(RateHz).MaxAgeMs, 0) : null;
        var html = await FirstView.Draw(loads, pads.Now(), session.Now(), now, Units.Named(unit, length));
        context.Response.Headers[HeaderNames.CacheControl] = "no-store";
        context.Response.Headers["ScaleLink-Run"] = now.StartId;
        context.Response.Headers["ScaleLink-Clock-Ns"] = $"{now.MonotonicNs}";
        return Results.Content(html, "text/html; charset=utf-8");
    }
}
