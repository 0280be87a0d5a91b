using System.Text.Json;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Workflows.WorkSessions;

namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>Carries the work session and the last reading on record to a broker, each time they say something else than before.</summary>
internal sealed class MqttSessionPublisher(MqttTopics topics, MqttSessionMapping mapping, SessionNow now, SessionDesk desk, TimeProvider time)
{
    /// <summary>Goes on until the connection breaks.</summary>
    public async Task Pump(MqttConnection connection, CancellationToken stop)
    {
        var (session, weighing) = ("", "");
        using var changes = new ChangeNudges(nudge => desk.Changed += nudge, nudge => desk.Changed -= nudge, time);
        await foreach (var _ in changes.Items.ReadAllAsync(stop))
        {
            var newest = mapping.Session(now.Look());
            var said = JsonSerializer.Serialize(newest with { T = "" }, MqttJson.Plain.MqttSession);
            if (said != session)
                await connection.Retain(topics.Session, newest, MqttJson.Plain.MqttSession, stop);
            session = said;
            if (desk.LastWeighed is not { Weighings: [.., var last] } weighed)
                continue;
            var reading = MqttSessionMapping.Weighing(weighed, last);
            said = JsonSerializer.Serialize(reading, MqttJson.Plain.MqttWeighing);
            if (said != weighing)
                await connection.Retain(topics.Weighing, reading, MqttJson.Plain.MqttWeighing, stop);
            weighing = said;
        }
    }
}
