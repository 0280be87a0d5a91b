using Bay.Tests.Brokers;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>A wall clock that steps, as when a machine without a battery finds the time on the network.</summary>
[Trait("needs", "bay")]
public class ClockStepTests
{
    private const string State = "scalelink/v1/unit6/state";
    private const string Loads = "scalelink/v1/unit6/loads";

    // The broker library's own watch over silent clients looks twice a second.
    private static readonly TimeSpan SeveralLooks = TimeSpan.FromSeconds(2);

    private static readonly TimeSpan[] Steps = [TimeSpan.FromHours(1), TimeSpan.FromHours(-1), TimeSpan.FromDays(1)];

    [Fact]
    public void Every_reader_of_the_embedded_broker_stays_connected()
    {
        SteppedClock.Need();
        using var clock = new SteppedClock();
        using var bay = new BayRig(through: clock.Through);
        Wait.Until(() => bay.Daemon.Pads.ListPads(new ListPadsRequest()).Serving.BrokerAnswers, Wait.Patience, "the broker answers");
        using var reader = new TopicReader(bay.MqttPort);
        Wait.Until(() => reader.Newest(State) is not null && reader.Newest(Loads) is not null, Wait.Patience, "birth and loads");
        using var page = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{bay.PagePort}") };
        foreach (var step in Steps)
        {
            clock.Step(step);
            Wait.Until(() => (Told(page) - DateTimeOffset.UtcNow - step).Duration() < TimeSpan.FromMinutes(1), Wait.Patience, () => $"a clock {step} off; it says {Told(page)}");
            Thread.Sleep(SeveralLooks);
            Assert.True(reader.IsConnected, $"thrown out by a step of {step}");
            var seen = reader.Received.Count;
            Wait.Until(() => reader.Received.Count > seen + 5, Wait.Patience, $"loads after a step of {step}");
        }

        // The daemon itself was not thrown out either: it was born once, and lost no broker.
        Assert.Single(reader.Received, r => r.Topic == State);
        Assert.DoesNotContain("SL-401", bay.Daemon.Process.Said);
        Assert.Equal(0ul, bay.Daemon.Pads.ListPads(new ListPadsRequest()).Serving.BrokerRefusals.SilentConnections);
    }

    // What the daemon's machine believes the time to be, as any web server tells it.
    private static DateTimeOffset Told(HttpClient page)
    {
        using var answer = page.Send(new HttpRequestMessage(HttpMethod.Head, "/"));
        return answer.Headers.Date!.Value;
    }
}
