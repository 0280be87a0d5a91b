using System.Text.Json;
using ScaleLink.Daemon.Work;

namespace ScaleLink.Daemon.Publishing.Mqtt;

/// <summary>Carries the work session and the last reading on record to a broker, each time they say something else than before.</summary>
internal sealed class MqttWork(MqttTopics topics, MqttWorkMapping mapping, SessionNow now, WorkDesk desk, TimeProvider time)
{
    /// <summary>Goes on until the connection breaks.</summary>
    public async Task Pump(MqttConnection connection, CancellationToken stop)
    {
        var (session, capture) = ("", "");
        using var changes = new ChangeNudges(nudge => desk.Changed += nudge, nudge => desk.Changed -= nudge, time);
        await foreach (var _ in changes.Items.ReadAllAsync(stop))
        {
            var newest = mapping.Session(now.Look());
            var said = JsonSerializer.Serialize(newest with { T = "" }, MqttJson.Plain.MqttSession);
            if (said != session)
                await connection.Retain(topics.Session, newest, MqttJson.Plain.MqttSession, stop);
            session = said;
            if (desk.LastCaptured is not { Captures: [.., var last] } captured)
                continue;
            var reading = MqttWorkMapping.Capture(captured, last);
            said = JsonSerializer.Serialize(reading, MqttJson.Plain.MqttCapture);
            if (said != capture)
                await connection.Retain(topics.Capture, reading, MqttJson.Plain.MqttCapture, stop);
            capture = said;
        }
    }
}
