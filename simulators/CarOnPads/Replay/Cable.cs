using CarOnPads.Ports;
using ScaleLink.Protocol.Captures;

namespace CarOnPads.Replay;

/// <summary>What an event of a capture does to a port.</summary>
static class Cable
{
    public static void Play(CaptureEvent happened, IPadPort port)
    {
        if (happened.Kind == CaptureEventKind.Received)
            port.Write(happened.Bytes.Span);
        else if (happened.Kind == CaptureEventKind.HangUp)
            port.Unplug();
        else if (happened.Kind == CaptureEventKind.Open)
            port.Replug();
    }
}
