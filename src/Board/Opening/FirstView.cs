using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Logging.Abstractions;
using ScaleLink.Api.V1;
using ScaleLink.Board.Age;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Readings;

namespace ScaleLink.Board.Opening;

/// <summary>
/// The live view drawn by the daemon, out of the page's own parts: the page needs seconds to start, and the crew need not wait for it to read
/// the loads. It can be read and has its links; what operates the bay comes with the page itself.
/// </summary>
public static class FirstView
{
    private static readonly IServiceProvider Nothing = new ServiceCollection().BuildServiceProvider();

    /// <summary>Draws the bay as it stands.</summary>
    /// <param name="loads">The newest loads; absent before the first.</param>
    /// <param name="pads">The pads now.</param>
    /// <param name="work">The session now.</param>
    /// <param name="now">The daemon's clock now.</param>
    /// <param name="units">What the device shows loads and lengths in.</param>
    /// <returns>HTML that stands where the page will.</returns>
    public static async Task<string> Draw(Loads? loads, ListPadsResponse pads, GetSessionResponse work, GetClockResponse now, Units units)
    {
        var clock = new DaemonClock(TimeProvider.System);
        var at = TimeProvider.System.GetTimestamp();
        clock.Take(now, at, at);
        var view = new BayView(
            AgeJudge.Judge(loads, loads?.Stamp, clock), AgeJudge.Judge(pads, pads.Stamp, clock), AgeJudge.Judge(work, work.Stamp, clock), loads is null ? DaemonDiagnostics.NotYet : null);
        var trace = new SettleTrace();
        if (view.Loads.Live is { } live)
            trace.Add(live);
        await using var renderer = new HtmlRenderer(Nothing, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<FirstSheet>(ParameterView.FromDictionary(new Dictionary<string, object?>
        {
            [nameof(FirstSheet.View)] = view,
            [nameof(FirstSheet.Units)] = units,
            [nameof(FirstSheet.Settles)] = trace.Settles,
        }))).ToHtmlString());
    }
}
