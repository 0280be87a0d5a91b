using MQTTnet;
using MQTTnet.Formatter;
using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace Daemon.Tests.Faces.Mqtt.Broker;

/// <summary>Who may stay connected to the embedded broker, and for how long.</summary>
public class BrokerConnectionTests
{
    [Fact]
    public async Task Whoever_does_not_say_who_it_is_goes_after_ten_seconds()
    {
        await using var bench = await BrokerBench.Start();
        var silent = bench.Raw();
        var slow = bench.Raw();
        slow.Send(0x10);
        var introduced = bench.Raw();
        Assert.Equal(0, introduced.Connect());
        // A connection is taken, and its byte read, when the machine comes to it.
        Assert.True(SpinWait.SpinUntil(() =>
        {
            bench.Time.Advance(BrokerLimits.IntroducedWithin);
            return bench.Counts.SilentConnections == 2;
        }, TimeSpan.FromSeconds(10)));
        Assert.False(silent.Receive(out _));
        Assert.False(slow.Receive(out _));
        Assert.True(introduced.IsAnswered());
    }

    // MQTT 3.1.1, section 3.1.2.10: one and a half times the keep-alive; the will is published (section 3.1.2.5).
    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    public async Task A_client_that_falls_silent_goes_and_its_will_comes(byte version)
    {
        await using var bench = await BrokerBench.Start();
        var (reader, _) = await bench.Client();
        var wills = 0;
        reader.ApplicationMessageReceivedAsync += _ =>
        {
            Interlocked.Increment(ref wills);
            return Task.CompletedTask;
        };
        await reader.SubscribeAsync("fuel-rig/state", cancellationToken: TestContext.Current.CancellationToken);
        var guest = bench.Raw();
        Assert.Equal(0, guest.Connect(keepAlive: 10, willTopic: "fuel-rig/state", version: version));
        bench.Time.Advance(TimeSpan.FromSeconds(14.9));
        Assert.True(guest.IsAnswered());
        bench.Time.Advance(TimeSpan.FromSeconds(14.9));
        Assert.True(guest.IsAnswered());
        Assert.Equal(0, wills);
        bench.Time.Advance(TimeSpan.FromSeconds(15));
        Assert.False(guest.Receive(out _));
        Assert.True(SpinWait.SpinUntil(() => Volatile.Read(ref wills) == 1, TimeSpan.FromSeconds(10)));
        Assert.Equal(1ul, bench.Counts.SilentConnections);
        Assert.True(reader.IsConnected);
    }

    // MQTT 3.1.1, section 3.1.2.10: a keep-alive of zero turns it off.
    [Fact]
    public async Task A_client_without_a_keep_alive_may_be_silent()
    {
        await using var bench = await BrokerBench.Start();
        var guest = bench.Raw();
        guest.Connect();
        bench.Time.Advance(TimeSpan.FromDays(30));
        Assert.True(guest.IsAnswered());
    }

    [Fact]
    public async Task A_guest_too_many_is_refused_and_the_daemon_still_gets_in()
    {
        await using var bench = await BrokerBench.Start();
        var first = bench.Raw();
        Assert.Equal(0, first.Connect());
        for (var i = 1; i < BrokerLimits.Guests; i++)
            Assert.Equal(0, bench.Raw().Connect());
        // MQTT 3.1.1, table 3.1: server unavailable.
        Assert.Equal(3, bench.Raw().Connect());
        var refused = await bench.Client();
        Assert.Equal(MqttClientConnectResultCode.ServerBusy, refused.Answer.ResultCode);
        Assert.Equal(2ul, bench.Counts.Connections);
        Assert.Equal(MqttClientConnectResultCode.Success, (await bench.Client(isDaemon: true)).Answer.ResultCode);

        first.Dispose();
        Assert.True(SpinWait.SpinUntil(() => bench.Raw().Connect() == 0, TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public async Task However_many_are_silent_whoever_speaks_gets_in()
    {
        await using var bench = await BrokerBench.Start();
        var silent = Enumerable.Range(0, 3 * BrokerLimits.Unintroduced).Select(_ => bench.Raw()).ToList();
        Assert.Equal(0, bench.Raw().Connect());
        Assert.False(silent[0].Receive(out _));
        Assert.Equal(2ul * BrokerLimits.Unintroduced + 1, bench.Counts.Connections);
    }

    [Theory]
    [InlineData(MqttProtocolVersion.V311)]
    [InlineData(MqttProtocolVersion.V500)]
    public async Task Nobody_comes_in_under_the_daemons_name(MqttProtocolVersion version)
    {
        await using var bench = await BrokerBench.Start();
        using var client = new MqttClientFactory().CreateMqttClient();
        var options = new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", bench.Port).WithProtocolVersion(version).WithClientId(bench.Pass.ClientId).WithCredentials(bench.Pass.ClientId, "guess");
        var answer = await client.ConnectAsync(options.Build(), TestContext.Current.CancellationToken);
        Assert.Equal(MqttClientConnectResultCode.NotAuthorized, answer.ResultCode);
    }
}
