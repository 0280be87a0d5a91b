using System.Buffers;

namespace ScaleLink.Protocol.Tests.PadFrames;

/// <summary>One piece of a sequence that lies varied in memory.</summary>
sealed class Segment : ReadOnlySequenceSegment<byte>
{
    Segment(ReadOnlyMemory<byte> memory, long runningIndex)
    {
        Memory = memory;
        RunningIndex = runningIndex;
    }

    public static ReadOnlySequence<byte> Chain(IReadOnlyList<ReadOnlyMemory<byte>> pieces)
    {
        var first = new Segment(pieces[0], 0);
        var last = first;
        foreach (var piece in pieces.Skip(1))
        {
            var next = new Segment(piece, last.RunningIndex + last.Memory.Length);
            last.Next = next;
            last = next;
        }
        return new ReadOnlySequence<byte>(first, 0, last, last.Memory.Length);
    }
}
