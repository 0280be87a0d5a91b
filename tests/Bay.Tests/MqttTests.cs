using System.Diagnostics;
using System.Text.Json.Nodes;
using Bay.Tests.Brokers;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>The MQTT face: birth, will, retained and live topics, payloads held against their published schemas.</summary>
[Trait("needs", "bay")]
public class MqttTests
{
    private const string State = "scalelink/v1/unit6/state";
    private const string Loads = "scalelink/v1/unit6/loads";
    private const string External = "broker = \"external\"";

    [Theory]
    [InlineData("mqttv311")]
    [InlineData("mqttv5")]
    public void Plain_mosquitto_sub_without_a_client_id_reads_the_embedded_broker(string version)
    {
        InstalledProgram.Need("mosquitto_sub");
        using var bay = new BayRig();
        var line = Assert.Single(Mosquitto.Subscribe(bay.MqttPort, Loads, 1, "-V", version));
        Assert.True(JsonNode.Parse(line)!["seq"]!.GetValue<long>() > 0);
    }

    [Fact]
    public void Every_payload_fits_its_schema_through_a_car_going_on_settling_and_losing_a_pad()
    {
        using var bay = new BayRig("default");
        Wait.Until(() => TryRead(bay.MqttPort), Wait.Patience, "the broker answers");
        using var reader = new TopicReader(bay.MqttPort);
        bay.PutCarOn();
        bay.Settled();
        bay.Simulator.Do("""{"do":"unplug","corner":"RR"}""");
        Wait.Until(() => reader.Newest("scalelink/v1/unit6/pads/RR")?["state"]?.GetValue<string>() == "absent", Wait.Patience, "RR absent");
        Wait.Until(() => reader.Newest(Loads)?["verdict"]?.GetValue<string>() == "incomplete", Wait.Patience, "loads incomplete");

        var schemas = reader.Received.Select(r => PayloadSchemas.Hold(r.Topic, r.Payload)).ToHashSet();
        Assert.Equal(["config", "loads", "pad", "state", "work-session"], schemas.Order());
        var verdicts = reader.Received.Where(r => r.Topic == Loads).Select(r => r.Payload["verdict"]!.GetValue<string>()).ToHashSet();
        Assert.Superset(new HashSet<string> { "incomplete", "raised", "moving", "settled" }, verdicts);
        Assert.DoesNotContain(reader.Received, r => r.Topic == Loads && r.Retained);
    }

    [Fact]
    public void A_killed_daemon_is_declared_offline_by_its_will_and_a_stopped_one_says_so_itself()
    {
        InstalledProgram.Need("mosquitto");
        using var bay = new BayRig(mqtt: External);
        using var broker = new Mosquitto(bay.MqttPort);
        using var reader = new TopicReader(bay.MqttPort);
        Wait.Until(() => reader.Newest(State)?["state"]?.GetValue<string>() == "online", Wait.Patience, "online");

        bay.Daemon.Process.Kill();
        Wait.Until(() => reader.Newest(State)?["reason"]?.GetValue<string>() == "lost", Wait.Patience, "lost");
        bay.RestartDaemon();
        Wait.Until(() => reader.Newest(State)?["state"]?.GetValue<string>() == "online", Wait.Patience, "online again");
        bay.RestartDaemon();
        Wait.Until(() => reader.Received.Any(r => r.Topic == State && r.Payload["reason"]?.GetValue<string>() == "stopped"), Wait.Patience, "stopped");

        // Whoever comes later finds state, config and pads, and no stale load.
        using var late = new TopicReader(bay.MqttPort);
        Wait.Until(() => late.Received.Count(r => r.Retained) >= 7, Wait.Patience, "retained topics");
        Assert.DoesNotContain(late.Received, r => r.Retained && r.Topic == Loads);
    }

    [Fact]
    public void A_broker_that_stops_answering_is_noticed_and_taken_up_again()
    {
        InstalledProgram.Need("mosquitto");
        using var bay = new BayRig(mqtt: External);
        using var broker = new Mosquitto(bay.MqttPort);
        using var reader = new TopicReader(bay.MqttPort, State);
        Wait.Until(() => reader.Newest(State) is not null, Wait.Patience, "birth");
        broker.Suspend();
        Wait.Until(() => bay.Daemon.Process.Said.Contains("no answer within"), Wait.Patience, "the dead broker noticed");
        broker.Resume();
        Wait.Until(() => reader.Received.Count(r => r.Payload["state"]?.GetValue<string>() == "online") >= 2, Wait.Patience, "born again");
    }

    [Fact]
    public void Nobody_else_may_publish_in_the_bays_name()
    {
        InstalledProgram.Need("mosquitto_pub");
        using var bay = new BayRig();
        Wait.Until(() => TryRead(bay.MqttPort), Wait.Patience, "the broker answers");
        using var reader = new TopicReader(bay.MqttPort);
        using (var intruder = Process.Start(InstalledProgram.Path("mosquitto_pub")!, ["-p", $"{bay.MqttPort}", "-t", Loads, "-q", "1", "-m", """{"seq":0}"""]))
            intruder.WaitForExit();
        Wait.Until(() => reader.Received.Count(r => r.Topic == Loads) > 10, Wait.Patience, "live loads");
        Assert.DoesNotContain(reader.Received, r => r.Payload["seq"]?.GetValue<long>() == 0);
    }

    private static bool TryRead(int port)
    {
        try
        {
            using var reader = new TopicReader(port);
            return true;
        }
        catch (MQTTnet.Exceptions.MqttCommunicationException)
        {
            return false;
        }
    }
}
