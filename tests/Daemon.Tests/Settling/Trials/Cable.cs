using CarOnPads.Ports;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Settling.Trials;

/// <summary>A cable in virtual time: what the simulated pad writes, the daemon's own conversation reads at once, and the other way round.</summary>
internal sealed class Cable : IPadPort
{
    private readonly Queue<byte> _toPad = new();
    private ListeningConversation? _conversation;
    private BayClock? _clock;

    public string Address => "cable";
    public bool Plugged => true;

    public bool HasReader => true;
    public long LostBytes => 0;

    /// <summary>Plugs the host's end into a pad of the daemon.</summary>
    public void Connect(PadChannel pad, BayClock clock)
    {
        (_conversation, _clock) = (new ListeningConversation(new PadFrameProtocol(), pad), clock);
        _conversation.Opened(clock.NowNs);
        Answer();
    }

    public void Write(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length == 0)
            return;
        _conversation!.Received(bytes, _clock!.NowNs);
        Answer();
    }

    public int Read(Span<byte> buffer)
    {
        var read = 0;
        while (read < buffer.Length && _toPad.TryDequeue(out buffer[read]))
            read++;
        return read;
    }

    public void Unplug() => throw new NotSupportedException("This cable stays plugged in.");

    public void Replug() => throw new NotSupportedException("This cable stays plugged in.");

    public void Dispose() => _toPad.Clear();

    private void Answer()
    {
        foreach (var value in _conversation!.Next(_clock!.NowNs).Send.Span)
            _toPad.Enqueue(value);
    }
}
