using CarOnPads.Ports;
using ScaleLink.Protocol.Recordings;

namespace CarOnPads.Replay;

/// <summary>
/// A pad that speaks by itself: its bytes come when they came. What the host says is heard and not answered. After a cable has been put back,
/// playing waits for the host to open the port again: what it missed would be lost to it.
/// </summary>
sealed class SpokenPlaying(IReadOnlyList<RecordingEvent> events, IPadPort port) : IPlaying
{
    readonly byte[] _fromHost = new byte[4096];
    int _next;
    long _lateNs;
    long? _waitingSinceNs, _openSinceNs;

    public IPadPort Port => port;

    public bool IsOver => _next == events.Count;

    public void AdvanceTo(long ns)
    {
        while (port.Read(_fromHost) > 0)
        {
            // The host asks for a hello; the link recording has the answer where it was.
        }

        while (!IsOver && !Waits(ns) && events[_next].AtNs + _lateNs + Grace(events[_next]) <= ns)
        {
            var happened = events[_next++];
            Cable.Play(happened, port);
            _lateNs += Grace(happened);
            if (happened.Kind == RecordingEventKind.Open && !port.HasReader)
                (_waitingSinceNs, _openSinceNs) = (ns, null);
        }
    }

    public void Dispose() => port.Dispose();

    // What has not been read goes with the cable: the host gets time to read it.
    static long Grace(RecordingEvent happened) => happened.Kind == RecordingEventKind.HangUp ? Player.OpeningNs : 0;

    bool Waits(long ns)
    {
        if (_waitingSinceNs is not { } since)
            return false;
        _openSinceNs = port.HasReader ? _openSinceNs ?? ns : null;
        if (_openSinceNs is not { } open || ns - open < Player.OpeningNs)
            return true;
        _lateNs += open + Player.OpeningNs - since;
        _waitingSinceNs = null;
        return false;
    }
}
