using System.Diagnostics;
using System.Globalization;
using Bay.Tests.Brokers;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>The embedded broker and programs that would use it up, or fall silent.</summary>
[Trait("needs", "bay")]
public class BrokerLimitTests(PlainBay plain) : IClassFixture<PlainBay>
{
    private const string Loads = "scalelink/v1/unit6/loads";

    [Fact]
    public async Task A_guest_that_asks_for_too_much_costs_little_and_disturbs_nobody()
    {
        const int Messages = 1000, Bytes = 60_000, Connections = 40;
        var bay = plain.Rig;
        Wait.Until(() => bay.Daemon.Pads.ListPads(new ListPadsRequest()).Serving.BrokerAnswers, Wait.Patience, "the broker answers");
        using var reader = new TopicReader(bay.MqttPort);
        using var rude = new RudeGuest(bay.MqttPort);
        // What the daemon needs to do any of this at all is not the guest's doing.
        await rude.Retain(2, 100);
        Wait.Until(() => Seq(reader).Count > 20, Wait.Patience, "loads");

        var before = Peak(bay.Daemon.Process.Id, isNew: true);
        var refused = await rude.Retain(Messages, Bytes);
        rude.PromiseTooMuch(Connections);
        Wait.Until(() => Refusals(bay).PacketsTooLarge == Connections, Wait.Patience, () => $"{Refusals(bay)}");
        var seen = Seq(reader).Count;
        Wait.Until(() => Seq(reader).Count > seen + 10, Wait.Patience, "loads afterwards");
        var cost = Peak(bay.Daemon.Process.Id, isNew: false) - before;

        Assert.InRange(cost, 0, 20_000_000);
        Assert.InRange(refused, Messages - 20, Messages);
        Assert.Equal((ulong)refused, Refusals(bay).RetainedMessages);
        Assert.Contains("SL-405", bay.Daemon.Process.Said);
        Assert.Contains("SL-406", bay.Daemon.Process.Said);
        // The other reader got every message of its pace, and young.
        var seqs = Seq(reader);
        Assert.Single(seqs.Zip(seqs.Skip(1), (one, next) => next - one).Distinct());
        Assert.All(reader.Received.Where(r => r.Topic == Loads), r => Assert.InRange(r.Payload["age_ms"]!.GetValue<double>(), 0, 1000 * r.Payload["max_age_s"]!.GetValue<double>()));
    }

    // MQTT 3.1.1, section 3.1.2.10: after one and a half times the keep-alive.
    [Fact]
    public void A_reader_that_is_stopped_goes_and_its_will_comes()
    {
        InstalledProgram.Need("mosquitto_sub");
        var bay = plain.Rig;
        Wait.Until(() => bay.Daemon.Pads.ListPads(new ListPadsRequest()).Serving.BrokerAnswers, Wait.Patience, "the broker answers");
        using var wills = new TopicReader(bay.MqttPort, "fuel-rig/#");
        string[] arguments = ["-h", "127.0.0.1", "-p", $"{bay.MqttPort}", "-t", Loads, "-k", "5", "--will-topic", "fuel-rig/state", "--will-payload", "\"gone\""];
        using var stopped = Process.Start(new ProcessStartInfo(InstalledProgram.Path("mosquitto_sub")!, arguments) { RedirectStandardOutput = true })!;
        Assert.NotNull(stopped.StandardOutput.ReadLine());
        var since = Stopwatch.GetTimestamp();
        Signals.Send(stopped.Id, "-STOP");
        Wait.Until(() => wills.Newest("fuel-rig/state")?.GetValue<string>() == "gone", Wait.Patience, "its will");
        // Its last packet is up to one keep-alive old when it is stopped.
        Assert.True(Stopwatch.GetElapsedTime(since) > TimeSpan.FromSeconds(2));
        Assert.Equal(1ul, Refusals(bay).SilentConnections);
        Assert.Contains("SL-408", bay.Daemon.Process.Said);
        stopped.Kill();
        stopped.WaitForExit();
    }

    private static BrokerRefusals Refusals(BayRig bay) => bay.Daemon.Pads.ListPads(new ListPadsRequest()).Serving.BrokerRefusals;

    private static List<long> Seq(TopicReader reader) => [.. reader.Received.Where(r => r.Topic == Loads).Select(r => r.Payload["seq"]!.GetValue<long>())];

    // The most memory that was resident, from the last time it was asked for anew: proc(5), VmHWM and clear_refs.
    private static long Peak(int process, bool isNew)
    {
        if (isNew)
            File.WriteAllText($"/proc/{process}/clear_refs", "5");
        var line = File.ReadLines($"/proc/{process}/status").Single(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
        return 1024 * long.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture);
    }
}
