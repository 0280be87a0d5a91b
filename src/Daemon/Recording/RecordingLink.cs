using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Protocol.Recordings;

namespace ScaleLink.Daemon.Recording;

/// <summary>A link that keeps on tape what goes over it.</summary>
internal sealed class RecordingLink(ILink link, LinkTape tape, BayClock clock) : ILink
{
    public Diagnostic? Reservation => link.Reservation;

    public int Read(byte[] buffer, int offset, int count)
    {
        try
        {
            var read = link.Read(buffer, offset, count);
            tape.Write(RecordingEventKind.Received, buffer.AsSpan(offset, read), clock.NowNs);
            return read;
        }
        catch (LinkEndedException e)
        {
            tape.Write(RecordingEventKind.HangUp, $"{e.Diagnostic.Code} {e.Diagnostic.Message}", clock.NowNs);
            throw;
        }
    }

    public void Write(ReadOnlySpan<byte> bytes)
    {
        // Before it is sent: the answer may be here before the call is back.
        tape.Write(RecordingEventKind.Sent, bytes, clock.NowNs);
        link.Write(bytes);
    }

    public void Dispose() => link.Dispose();
}
