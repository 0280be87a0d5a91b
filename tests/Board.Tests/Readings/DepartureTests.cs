using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using ScaleLink.Api.V1;
using ScaleLink.Board.PadInterchange;
using ScaleLink.Measure;

namespace Board.Tests.Readings;

/// <summary>What four placements come to, drawn by the page's own part. Numbers by hand; no published source.</summary>
public class DepartureTests
{
    [Fact]
    public async Task Each_pad_has_its_departure_its_interval_and_its_verdict()
    {
        var html = await Draw(new InterchangeResult
        {
            Pads =
            {
                new PadDeparture { SerialNumber = "P-1", Relative = 0.00412, Expanded = 0.00103, Departs = true },
                new PadDeparture { SerialNumber = "P-2", Relative = -0.00051, Expanded = 0.00103 },
            },
            LoadsKg = new CornerNumbers { Lf = 100, Rf = 200, Lr = 300, Rr = 400 },
            CrossWeightPercent = 50,
            WarpKg = { 0.25, -0.25 },
            CannotSee = { "an error that all share" },
        });
        Assert.Matches("data-departure=\"P-1\" data-departs=\"yes\">.*0\\.412 % high ± 0\\.103.*departs: calibrate it with masses.*data-departure=\"P-2\" data-departs=\"no\">.*0\\.051 % low ± 0\\.103.*no departure seen", html);
        // 1 lb = 0.45359237 kg exactly (NIST Special Publication 811:2008, appendix B.8): 100 kg and 0.25 kg by hand.
        Assert.Contains("220.46", html);
        Assert.Contains("+0.55, \u22120.55 lb", html);
        Assert.Contains("an error that all share", html);
    }

    private static async Task<string> Draw(InterchangeResult result)
    {
        await using var services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        var html = await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<InterchangeResultPanel>(ParameterView.FromDictionary(new Dictionary<string, object?>
        {
            [nameof(InterchangeResultPanel.Result)] = result,
            [nameof(InterchangeResultPanel.Unit)] = Unit.Pound,
        }))).ToHtmlString());
        return System.Net.WebUtility.HtmlDecode(html).ReplaceLineEndings(" ");
    }
}
