using System.Text.RegularExpressions;
using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Timing.Tests.Recording;

/// <summary>What the links have carried, written on a fault and on request. A pad that fell silent on a busy machine would be a fault of its own.</summary>
[Trait("needs", "bay")]
public class RecorderTests
{
    [Fact]
    public void A_fault_is_written_with_what_came_before_and_after_it_and_a_request_at_once()
    {
        using var bay = new BayRig(speak: "RF=modbus,RR=modbus");
        bay.WaitLive();
        var recorder = new Recorder.RecorderClient(bay.Daemon.Channel);
        var control = new RecorderControl.RecorderControlClient(bay.Daemon.Channel);
        // On a busy machine a slave may have been too late with an answer already.
        Assert.DoesNotContain(recorder.ListLinkRecordings(new ListLinkRecordingsRequest()).Recordings, c => c.Name.Contains("-LF-", StringComparison.Ordinal));

        bay.Simulator.Do("""{"do":"unplug","corner":"LF"}""");
        Wait.Until(() => bay.Daemon.Pad("LF").State == PadState.Absent, Wait.Patience, "LF gone");
        bay.Simulator.Do("""{"do":"replug","corner":"LF"}""");
        RecordingFile? file = null;
        Wait.Until(() => (file = recorder.ListLinkRecordings(new ListLinkRecordingsRequest()).Recordings.FirstOrDefault(c => Regex.IsMatch(c.Name, @"-LF-SL-10[15]\.recording$"))) is not null, Wait.Patience, "the fault is written");
        var text = recorder.GetLinkRecording(new GetLinkRecordingRequest { Name = file!.Name }).Text;
        Assert.Equal(file.Bytes, (ulong)text.Length);
        Assert.Contains("device: LF serial number SLP-1001 firmware", text);
        // The greeting, samples, the hang-up, the fault, and the port's return.
        Assert.Matches(@"(?s) open .* sent 00 .* received .* hang-up SL-105 .* fault SL-105 LF: .* open .* received ", text);

        var written = control.RecordLinks(new RecordLinksRequest { Corners = { Corner.Rr }, Note = "on the lift\n\e[2J", Seconds = 2 }).Recordings;
        text = recorder.GetLinkRecording(new GetLinkRecordingRequest { Name = Assert.Single(written).Name }).Text;
        Assert.Contains("device: RF slave 2 serial number SLP-1002\ndevice: RR slave 4 serial number SLP-1004\n", text);
        Assert.Contains("note: on the lift [2J\n", text);
        var times = text[text.IndexOf("\n\n", StringComparison.Ordinal)..].Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => double.Parse(l.Split(' ')[0])).ToList();
        Assert.InRange(times[^1] - times[0], 1, 2.1);

        var failure = Assert.Throws<RpcException>(() => recorder.GetLinkRecording(new GetLinkRecordingRequest { Name = "../bay.toml" }));
        Assert.Contains("SL-443", failure.Status.Detail);
        failure = Assert.Throws<RpcException>(() => control.RecordLinks(new RecordLinksRequest { Seconds = 9999 }));
        Assert.Contains("SL-442", failure.Status.Detail);
    }
}
