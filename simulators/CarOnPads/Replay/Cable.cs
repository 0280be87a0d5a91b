using CarOnPads.Ports;
using ScaleLink.Protocol.Recordings;

namespace CarOnPads.Replay;

/// <summary>What an event of a link recording does to a port.</summary>
static class Cable
{
    public static void Play(RecordingEvent happened, IPadPort port)
    {
        if (happened.Kind == RecordingEventKind.Received)
            port.Write(happened.Bytes.Span);
        else if (happened.Kind == RecordingEventKind.HangUp)
            port.Unplug();
        else if (happened.Kind == RecordingEventKind.Open)
            port.Replug();
    }
}
