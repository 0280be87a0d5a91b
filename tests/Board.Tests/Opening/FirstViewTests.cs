using ScaleLink.Api.V1;
using ScaleLink.Board.Opening;
using ScaleLink.Measure;
using static ScaleLink.Measure.Sentences.Arguments;

namespace Board.Tests.Opening;

/// <summary>1 lb = 0.453 592 37 kg and 1 in = 25.4 mm, both exact (NIST Special Publication 811:2008, appendix B.8).</summary>
public class FirstViewTests
{
    private static readonly Diagnostic Fault = new(PadStateCodes.EmptyPadReads, $"The empty pad reads {Kg(4.5359237):+0.00} at {Mm(25.4):0.0}.", $"Look within {Mm(50.8):0}.");

    [Theory]
    [InlineData(null, null, "The empty pad reads +4.54 kg at 25.4 mm.", "Look within 51 mm.")]
    [InlineData("lb", null, "The empty pad reads +10.00 lb at 25.4 mm.", "Look within 51 mm.")]
    [InlineData("lb", "in", "The empty pad reads +10.00 lb at 1.000 in.", "Look within 2.00 in.")]
    public async Task What_the_daemon_says_is_drawn_in_the_units_of_the_device(string? unit, string? length, string message, string remedy)
    {
        var html = await FirstView.Draw(Loads(), new ListPadsResponse(), new GetSessionResponse(), new GetClockResponse { StartId = "one", MonotonicNs = 1 }, Units.Named(unit, length));
        // As the next step, and in the list of what is wrong.
        Assert.Equal(2, html.Split(Encoded(message)).Length - 1);
        Assert.Equal(2, html.Split(Encoded(remedy)).Length - 1);
    }

    private static string Encoded(string text) => System.Text.Encodings.Web.HtmlEncoder.Default.Encode(text);

    private static Loads Loads()
    {
        var loads = new Loads { Bay = "unit6", Verdict = Verdict.Incomplete, Stamp = new Stamp { StartId = "one", MonotonicNs = 1, MaxAgeMs = 60_000 } };
        loads.Corners.AddRange(WireCorners.All.Select(c => new CornerLoad { Corner = c }));
        loads.Corners[0].Faults.Add(ScaleLink.Api.V1.Diagnostic.Of(Fault));
        return loads;
    }
}
