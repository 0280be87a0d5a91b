using System.Diagnostics;
using Bay.Tests.Brokers;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>
/// A broker of the workshop that ends and comes back again and again, without a goodbye and with nothing retained: each time the bay is there by itself, with
/// all that is retained, and the loads go on meanwhile. Three restarts here; 50 with SCALELINK_LONG=1. The project's own requirement.
/// </summary>
[Trait("needs", "bay")]
public sealed class BrokerRestartTests(ITestOutputHelper output)
{
    private const string State = "scalelink/v1/unit6/state", Loads = "scalelink/v1/unit6/loads";
    private static readonly string[] Retained = [State, .. ((string[])["config", "work-session", "pads/LF", "pads/RF", "pads/LR", "pads/RR"]).Select(t => $"scalelink/v1/unit6/{t}")];
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(300);
    private const int LongestGapMs = 1500, LongestAbsenceMs = 3000;

    private static readonly int Restarts = Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1" ? 50 : 3;

    [Fact]
    public void Each_time_the_bay_comes_back_with_all_that_it_retains()
    {
        InstalledProgram.Need("mosquitto");
        var chance = new Random(20261130);
        using var bay = new BayRig(mqtt: "broker = \"external\"");
        bay.WaitLive();
        using var watch = new LoadsWatch(bay.Daemon);
        List<double> took = [];
        for (var restart = 0; restart <= Restarts; restart++)
        {
            using (var broker = new Mosquitto(bay.MqttPort))
            {
                var answers = Stopwatch.GetTimestamp();
                using var reader = new TopicReader(bay.MqttPort);
                Wait.Until(() => reader.Newest(State)?["state"]?.GetValue<string>() == "online" && reader.Newest(Loads) is not null, Wait.Patience, $"back after restart {restart}");
                took.Add(Stopwatch.GetElapsedTime(answers).TotalSeconds);
                Wait.Until(() => IsAllRetained(bay), Wait.Patience, $"all that is retained, after restart {restart}");
                // It may end while everything is being published, or long after.
                Thread.Sleep(chance.Next(LongestAbsenceMs));
            }

            Thread.Sleep(chance.Next(LongestAbsenceMs));
        }

        var gaps = watch.Received.Zip(watch.Received.Skip(1), (a, b) => Stopwatch.GetElapsedTime(a.At, b.At).TotalMilliseconds).ToList();
        Assert.InRange(gaps.Max(), 0, LongestGapMs);
        // That it is gone, and sometimes once more that nobody answers there.
        var told = bay.Daemon.Process.Said.Split('\n').Count(line => line.Contains("SL-401", StringComparison.Ordinal));
        Assert.InRange(told, 1, 2 * (Restarts + 1));
        took.Sort();
        output.WriteLine($"{Restarts} restarts: back within {took[took.Count / 2]:0.0} s at the median, {took[^1]:0.0} s at most; the longest gap of the loads over gRPC {gaps.Max():0} ms; SL-401 in {told} lines of the log");
    }

    // Only what lies there when somebody comes is marked as retained: each look is that of somebody new.
    private static bool IsAllRetained(BayRig bay)
    {
        using var late = new TopicReader(bay.MqttPort);
        Thread.Sleep(Look);
        return !Retained.Except(late.Received.Where(r => r.Retained).Select(r => r.Topic)).Any();
    }
}
