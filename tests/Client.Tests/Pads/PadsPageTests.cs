using Client.Tests.Terminal;
using ScaleLink.Api.V1;
using ScaleLink.Client.Pads;
using Shared;

namespace Client.Tests.Pads;

public class PadsPageTests
{
    [Fact]
    public void A_healthy_bay_with_one_pad_gone()
    {
        var pads = Readouts.Pads();
        pads.Pads[0].Zero = new ZeroRecord { Time = Readouts.Stamp().Time, Who = "crew", Counts = 1 };
        pads.Pads[0].Calibrated = true;
        pads.Pads[3] = new Pad { Corner = Corner.Rr, State = PadState.Absent, Faults = { new ScaleLink.Api.V1.Diagnostic { Code = "SL-101", Message = "There is no port /dev/ttyUSB3.", Remedy = "Plug the adapter in; look at its cable." } } };
        // After a restart nobody knows who is at RR: what is on record is said, and not that it was never calibrated.
        pads.Pads[3].LastCalibration = new LastCalibration { SerialNumber = "SLP-1004", Time = Readouts.Stamp().Time, Who = "A. Prover", CalibratedToKg = 400 };
        Assert.DoesNotContain(Lines(Readouts.Live(pads)), line => line.Contains("Nominal only") && line.Contains("RR"));
        Approve("pads", Lines(Readouts.Live(pads)));
    }

    [Fact]
    public void An_old_list_says_so() => Assert.Contains("HELD: 7.0 s old", string.Join('\n', Lines(Readouts.Held(Readouts.Pads(), 7))));

    [Fact]
    public void Markup_in_a_pads_words_is_only_text()
    {
        var pads = Readouts.Pads();
        pads.Pads[0].SerialNumber = "[red]x[/]\e[2J";
        var text = string.Join('\n', Lines(Readouts.Live(pads)));
        Assert.Contains("[red]x[/][2J", text);
        Assert.DoesNotContain('\e', text);
    }

    [Fact]
    public void Without_a_list_only_the_trouble_is_said() =>
        Assert.Equal("away start it (SL-420)", string.Join('\n', Lines(Readouts.Absent<ListPadsResponse>(new Diagnostic(Code.Read("SL-420"), "away", "start it")))));

    private static IReadOnlyList<string> Lines(ScaleLink.Client.Age.Judged<ListPadsResponse> view) => PadsPage.Lines(view, Shells.Redirected(), (100, 40));

    private static void Approve(string name, IReadOnlyList<string> lines) =>
        Approved.Matches(string.Join('\n', lines.Select(l => l.TrimEnd())), "tests", "Client.Tests", "Pads", $"{name}.approved.txt");
}
