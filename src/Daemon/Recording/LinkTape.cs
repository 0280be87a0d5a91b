using System.Buffers.Binary;
using System.Text;
using ScaleLink.Protocol.Recordings;

namespace ScaleLink.Daemon.Recording;

/// <summary>
/// What one link has carried of late: a ring of bytes, bounded by its size and by time, into which the link's own thread writes at the cost of
/// a copy. Nothing is allocated until somebody wants to read it. Thread-safe.
/// </summary>
internal sealed class LinkTape
{
    /// <summary>What one read of a link can bring must fit several times.</summary>
    public const int LeastCapacity = 1 << 18;

    private const int HeadLength = sizeof(long) + sizeof(byte) + sizeof(int);

    private readonly Lock _gate = new();
    private readonly byte[] _ring;
    private readonly long _spanNs;
    private long _oldest, _next;

    /// <summary>An empty tape that keeps at most so many bytes, none older than so many ns.</summary>
    public LinkTape(int capacity, long spanNs)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacity, LeastCapacity);
        (_ring, _spanNs) = (new byte[capacity], spanNs);
    }

    /// <summary>Keeps bytes that came or were sent.</summary>
    public void Write(RecordingEventKind kind, ReadOnlySpan<byte> payload, long atNs)
    {
        lock (_gate)
        {
            // Longer than any read or question; the end of it tells more than its beginning.
            if (payload.Length > _ring.Length / 2)
                payload = payload[^(_ring.Length / 2)..];
            Forget(atNs, HeadLength + payload.Length);
            Span<byte> head = stackalloc byte[HeadLength];
            BinaryPrimitives.WriteInt64LittleEndian(head, atNs);
            head[sizeof(long)] = (byte)kind;
            BinaryPrimitives.WriteInt32LittleEndian(head[(sizeof(long) + 1)..], payload.Length);
            Put(head);
            Put(payload);
        }
    }

    /// <summary>Keeps what happened.</summary>
    public void Write(RecordingEventKind kind, string text, long atNs) => Write(kind, Encoding.UTF8.GetBytes(text), atNs);

    /// <summary>A copy of what has happened since an instant, oldest first.</summary>
    public IReadOnlyList<RecordingEvent> Since(long fromNs)
    {
        lock (_gate)
        {
            var events = new List<RecordingEvent>();
            for (var at = _oldest; at < _next; at += HeadLength + LengthAt(at))
                if (TimeAt(at) >= fromNs)
                    events.Add(EventAt(at));
            return events;
        }
    }

    // Makes room, and lets go of what is too old.
    private void Forget(long nowNs, int needed)
    {
        while (_oldest < _next && (_next - _oldest + needed > _ring.Length || TimeAt(_oldest) < nowNs - _spanNs))
            _oldest += HeadLength + LengthAt(_oldest);
    }

    private RecordingEvent EventAt(long at)
    {
        var kind = (RecordingEventKind)_ring[Index(at + sizeof(long))];
        var payload = new byte[LengthAt(at)];
        Get(at + HeadLength, payload);
        var happened = new RecordingEvent(TimeAt(at), kind, payload);
        return happened.HasBytes ? happened : happened with { Bytes = default, Text = Encoding.UTF8.GetString(payload) };
    }

    private long TimeAt(long at)
    {
        Span<byte> bytes = stackalloc byte[sizeof(long)];
        Get(at, bytes);
        return BinaryPrimitives.ReadInt64LittleEndian(bytes);
    }

    private int LengthAt(long at)
    {
        Span<byte> bytes = stackalloc byte[sizeof(int)];
        Get(at + sizeof(long) + 1, bytes);
        return BinaryPrimitives.ReadInt32LittleEndian(bytes);
    }

    private void Put(ReadOnlySpan<byte> bytes)
    {
        var first = Math.Min(bytes.Length, _ring.Length - Index(_next));
        bytes[..first].CopyTo(_ring.AsSpan(Index(_next)));
        bytes[first..].CopyTo(_ring);
        _next += bytes.Length;
    }

    private void Get(long at, Span<byte> bytes)
    {
        var first = Math.Min(bytes.Length, _ring.Length - Index(at));
        _ring.AsSpan(Index(at), first).CopyTo(bytes);
        _ring.AsSpan(0, bytes.Length - first).CopyTo(bytes[first..]);
    }

    private int Index(long at) => (int)(at % _ring.Length);
}
