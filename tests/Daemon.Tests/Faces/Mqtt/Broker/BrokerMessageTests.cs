using System.Text;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;
using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace Daemon.Tests.Faces.Mqtt.Broker;

/// <summary>What a guest may send to the embedded broker and leave there.</summary>
public class BrokerMessageTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_packet_that_promises_too_much_ends_its_connection_before_anything_is_allocated()
    {
        await using var bench = await BrokerBench.Start();
        var stranger = bench.Raw();
        var guest = bench.Raw();
        guest.Connect();
        var before = GC.GetTotalAllocatedBytes(precise: true);
        stranger.Send(0x10, 0xFF, 0xFF, 0xFF, 0x7F);
        guest.Send(0x30, 0xFF, 0xFF, 0xFF, 0x7F);
        Assert.False(stranger.Receive(out _));
        Assert.False(guest.Receive(out _));
        Assert.Equal(2ul, bench.Counts.PacketsTooLarge);
        // Each promised 256 MB. Other tests of this process allocate meanwhile, but not that.
        Assert.InRange(GC.GetTotalAllocatedBytes(precise: true) - before, 0, 200_000_000);
    }

    [Fact]
    public async Task The_longest_packet_of_a_guest_is_taken_and_one_byte_more_is_not()
    {
        await using var bench = await BrokerBench.Start();
        // Type, three bytes of length, topic with its length, payload.
        var payload = new byte[BrokerLimits.GuestPacket - 1 - 3 - 2 - "a".Length];
        var guest = bench.Raw();
        guest.Connect();
        guest.Send([.. Publish(payload.Length + 3), .. payload]);
        Assert.True(guest.IsAnswered());
        guest.Send([.. Publish(payload.Length + 4), .. payload]);
        Assert.False(guest.Receive(out _));
    }

    [Fact]
    public async Task The_daemon_may_send_more_and_each_is_told_how_much()
    {
        await using var bench = await BrokerBench.Start();
        var (reader, told) = await bench.Client();
        Assert.Equal((uint)BrokerLimits.GuestPacket, told.MaximumPacketSize);
        Assert.Equal(0, told.TopicAliasMaximum);
        var got = new TaskCompletionSource<long>();
        reader.ApplicationMessageReceivedAsync += e =>
        {
            got.TrySetResult(e.ApplicationMessage.Payload.Length);
            return Task.CompletedTask;
        };
        await reader.SubscribeAsync("scalelink/#", cancellationToken: Stop);
        var (daemon, toldDaemon) = await bench.Client(isDaemon: true);
        Assert.Equal((uint)BrokerLimits.OwnPacket, toldDaemon.MaximumPacketSize);
        await daemon.PublishBinaryAsync("scalelink/v1/unit6/work-session", new byte[900_000], cancellationToken: Stop);
        Assert.Equal(900_000, await got.Task.WaitAsync(TimeSpan.FromSeconds(20), Stop));
    }

    // MQTT 5.0, section 3.3.2.3.4: no alias above the maximum that was told, and that is zero.
    [Fact]
    public async Task A_topic_alias_ends_the_connection()
    {
        await using var bench = await BrokerBench.Start();
        var guest = bench.Raw();
        Assert.Equal(0, guest.Connect(version: 5));
        guest.Send(0x30, 0x07, 0x00, 0x01, (byte)'a', 0x03, 0x23, 0x00, 0x01);
        Assert.False(guest.Receive(out _));
    }

    [Fact]
    public async Task Messages_of_guests_are_retained_up_to_a_number()
    {
        await using var bench = await BrokerBench.Start();
        var (guest, _) = await bench.Client();
        for (var i = 0; i < BrokerLimits.RetainedMessages; i++)
            Assert.NotEqual(MqttClientPublishReasonCode.QuotaExceeded, await Retain(guest, $"tyres/{i}", "28 psi"));
        Assert.Equal(MqttClientPublishReasonCode.QuotaExceeded, await Retain(guest, "tyres/one-more", "28 psi"));
        // MQTT 3.1.1 has no word for it.
        var (old, _) = await bench.Client(MqttProtocolVersion.V311);
        await Retain(old, "tyres/one-more", "28 psi");
        Assert.Equal(2ul, bench.Counts.RetainedMessages);
        Assert.Equal(BrokerLimits.RetainedMessages, await Retained(bench));

        await Retain(guest, "tyres/7", "");
        Assert.NotEqual(MqttClientPublishReasonCode.QuotaExceeded, await Retain(guest, "tyres/one-more", "28 psi"));
        var (daemon, _) = await bench.Client(isDaemon: true);
        Assert.NotEqual(MqttClientPublishReasonCode.QuotaExceeded, await Retain(daemon, "scalelink/v1/unit6/state", "online"));
        Assert.Equal(BrokerLimits.RetainedMessages + 1, await Retained(bench));
    }

    [Fact]
    public async Task Messages_of_guests_are_retained_up_to_a_size()
    {
        await using var bench = await BrokerBench.Start();
        var (guest, _) = await bench.Client();
        var long60 = new string('x', 60_000);
        var kept = 0;
        while (await Retain(guest, $"tyres/{kept}", long60) != MqttClientPublishReasonCode.QuotaExceeded)
            kept++;
        Assert.Equal(BrokerLimits.RetainedBytes / 60_010, kept);
        Assert.Equal(kept, await Retained(bench));
    }

    [Theory]
    [InlineData("scalelink/v1/unit6/loads")]
    [InlineData("ScaleLink/v1/unit6/loads")]
    [InlineData("/scalelink/v1/unit6/loads")]
    public async Task Topics_that_are_taken_for_the_daemons_are_refused_to_guests(string topic)
    {
        await using var bench = await BrokerBench.Start();
        var (guest, _) = await bench.Client();
        Assert.Equal(MqttClientPublishReasonCode.NotAuthorized, await Retain(guest, topic, "{}"));
        Assert.Equal(0, await Retained(bench));
    }

    [Fact]
    public async Task A_client_has_so_many_topic_filters()
    {
        await using var bench = await BrokerBench.Start();
        var (guest, _) = await bench.Client();
        for (var i = 0; i < BrokerLimits.Filters; i++)
            Assert.True(await Subscribe(guest, $"tyres/{i}"));
        Assert.False(await Subscribe(guest, "tyres/one-more"));
        Assert.True(await Subscribe(guest, "tyres/0"));
        await guest.UnsubscribeAsync("tyres/0", Stop);
        Assert.True(await Subscribe(guest, "tyres/one-more"));
        Assert.True(await Subscribe((await bench.Client()).Client, "tyres/0"));
        Assert.Equal(1ul, bench.Counts.Subscriptions);
    }

    // MQTT 3.1.1, section 3.8.4: a server may grant less than was asked for.
    [Fact]
    public async Task Readers_are_served_at_most_once_so_that_nothing_waits_for_their_word()
    {
        await using var bench = await BrokerBench.Start();
        var guest = bench.Raw();
        guest.Connect();
        guest.Send(0x82, 0x06, 0x00, 0x01, 0x00, 0x01, (byte)'a', 0x02);
        Assert.True(guest.Receive(out var granted));
        Assert.Equal([0x00, 0x01, 0x00], granted.Body);
        await Retain((await bench.Client()).Client, "a", "b");
        Assert.True(guest.Receive(out var message));
        Assert.Equal(0x30, message.Type);
    }

    // MQTT 3.1.1, section 3.3, at most once, with a length of three bytes.
    private static byte[] Publish(int length) => [0x30, (byte)(length | 0x80), (byte)((length >> 7) | 0x80), (byte)(length >> 14), 0x00, 0x01, (byte)'a'];

    private static async Task<MqttClientPublishReasonCode> Retain(IMqttClient client, string topic, string payload) =>
        (await client.PublishStringAsync(topic, payload, MqttQualityOfServiceLevel.AtLeastOnce, retain: true, cancellationToken: Stop)).ReasonCode;

    private static async Task<bool> Subscribe(IMqttClient client, string filter) =>
        (await client.SubscribeAsync(filter, cancellationToken: Stop)).Items.Single().ResultCode <= MqttClientSubscribeResultCode.GrantedQoS2;

    // Whoever comes later gets them all, and after them what he publishes himself.
    private static async Task<int> Retained(BrokerBench bench)
    {
        var (reader, _) = await bench.Client();
        var (count, end) = (0, new TaskCompletionSource());
        reader.ApplicationMessageReceivedAsync += e =>
        {
            if (e.ApplicationMessage.Topic == "end")
                end.TrySetResult();
            else if (e.ApplicationMessage.Retain)
                count++;
            return Task.CompletedTask;
        };
        await reader.SubscribeAsync("#", cancellationToken: Stop);
        await reader.PublishBinaryAsync("end", Encoding.ASCII.GetBytes("end"), cancellationToken: Stop);
        await end.Task.WaitAsync(TimeSpan.FromSeconds(20), Stop);
        return count;
    }
}
