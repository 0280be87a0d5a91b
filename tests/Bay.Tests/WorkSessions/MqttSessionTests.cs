using System.Text.Json.Nodes;
using Bay.Tests.Brokers;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.WorkSessions;

/// <summary>Session and last reading over MQTT through a real Mosquitto, held against gRPC and the published schemas.</summary>
[Trait("needs", "bay")]
public class MqttSessionTests
{
    private const string SessionTopic = "scalelink/v1/unit6/work-session";
    private const string WeighingTopic = "scalelink/v1/unit6/weighing";
    [Fact]
    public void The_session_and_its_last_reading_are_retained_and_stay_true_after_restart_and_end()
    {
        InstalledProgram.Need("mosquitto");
        using var bay = new BayRig(mqtt: "broker = \"external\"");
        Session last;
        using (new Mosquitto(bay.MqttPort))
            last = Through(bay);

        // A broker that has forgotten everything gets the last reading again from a daemon that is started anew.
        bay.Daemon.Process.Kill();
        using var other = new Mosquitto(bay.MqttPort);
        bay.RestartDaemon();
        using var late = Reader(bay);
        Until(late, SessionTopic, s => Is(s["state"], "none"));
        Until(late, WeighingTopic, c => c["number"]!.GetValue<uint>() == last.Weighings[^1].Number && Is(c["session"], last.Id));
        using var later = Reader(bay);
        Wait.Until(() => later.Received.Count(r => r.Retained && r.Topic is SessionTopic or WeighingTopic) == 2, Wait.Patience, "both retained");
        Assert.All([.. late.Received, .. later.Received], r => PayloadSchemas.Hold(r.Topic, r.Payload));
    }

    private static Session Through(BayRig bay)
    {
        using var reader = Reader(bay);
        var crew = new CrewAtWork(bay);
        bay.Zero();
        crew.ChooseHeron();
        Until(reader, SessionTopic, s => Is(s["state"], "none"));
        crew.Prepare();
        bay.Simulator.DoAndWait("""{"do":"lower"}""");
        Until(reader, SessionTopic, s => Is(s["state"], "baseline") && s["cross_weight_percent"] is null);
        Assert.Null(reader.Newest(WeighingTopic));

        Agree(reader, crew.SettleAndWeigh(), "baseline");
        var turned = bay.Daemon.WorkSessionControl.RecordAdjustment(new RecordAdjustmentRequest { By = CrewAtWork.By, AsPlanned = true });
        Until(reader, SessionTopic, s => Is(s["state"], "settling") && Is(s["turn"], turned.OpenAdjustments[0].Words));
        crew.Turn(turned.OpenAdjustments[0].Turns);
        var last = crew.SettleAndWeigh();
        Agree(reader, last, "settle");
        bay.Daemon.WorkSessionControl.AbandonSession(new AbandonSessionRequest { By = CrewAtWork.By, Because = "seen enough" });
        Until(reader, SessionTopic, s => Is(s["state"], "none"));
        Assert.All(reader.Received, r => PayloadSchemas.Hold(r.Topic, r.Payload));
        return last;
    }

    private static TopicReader Reader(BayRig bay) => new(bay.MqttPort, "scalelink/v1/unit6/#");

    private static void Agree(TopicReader reader, Session session, string kind)
    {
        var weighing = session.Weighings[^1];
        Until(reader, WeighingTopic, c => c["number"]!.GetValue<uint>() == weighing.Number && Is(c["kind"], kind) && Is(c["session"], session.Id));
        var said = reader.Newest(WeighingTopic)!;
        Assert.Equal(weighing.Loads.LoadsKg.Rr.Estimate, said["corners"]!["RR"]!["load_kg"]!.GetValue<double>(), 0.0006);
        Assert.Equal(weighing.Loads.CrossWeightPercent.Estimate, said["cross_weight_percent"]!["value"]!.GetValue<double>(), 0.0001);
        Assert.Equal(weighing.Adjustment?.Turns.Lr, said["turns"]?["LR"]?.GetValue<double>());
        Until(reader, SessionTopic, s => s["entry"]?.GetValue<ulong>() == session.Entry);
        var newest = reader.Newest(SessionTopic)!;
        Assert.Equal(session.Standing.CrossWeightPercent.Estimate, newest["cross_weight_percent"]!["value"]!.GetValue<double>(), 0.0001);
        Assert.Equal(session.Next, newest["next"]!.GetValue<string>());
        Assert.Equal(session.Weighings.Count, newest["weighings"]!.GetValue<int>());
    }

    private static void Until(TopicReader reader, string topic, Func<JsonNode, bool> holds) =>
        Wait.Until(() => reader.Newest(topic) is { } newest && holds(newest), Wait.Patience, () => $"{topic}; last {reader.Newest(topic)}");

    private static bool Is(JsonNode? node, string word) => node?.GetValue<string>() == word;
}
