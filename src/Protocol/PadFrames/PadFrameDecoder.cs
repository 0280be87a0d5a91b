using System.Buffers;
using ScaleLink.Protocol.Framing;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>
/// Finds pad frames in a stream of bytes, and the next good one after any garbage. It keeps no input: what it has not
/// consumed must come again at the head of the next input, as a pipe reader does by itself. Allocates nothing a frame.
/// One stream, one thread.
/// </summary>
sealed class PadFrameDecoder
{
    const byte Delimiter = 0;
    const int MinStretch = 1 + PadBody.MinLength + FrameCheck.Length;
    const int LengthPosition = 2;

    readonly byte[] _stretch = new byte[PadFrameWriter.MaxFrameLength];
    readonly byte[] _body = new byte[PadBody.MaxLength];
    readonly SkipLog _skips = new();
    long _bytes, _frames, _badFrames, _skippedBytes, _unknownKinds;
    bool _sawDelimiter, _insideTooLong;
    int _missingFromDamaged;

    /// <summary>What the decoder has seen since it was made.</summary>
    public DecoderCounters Counters => new(_bytes, _frames, _badFrames, _skippedBytes, _unknownKinds);

    /// <summary>The newest skips, at most 16, oldest first. The list is a copy.</summary>
    public IReadOnlyList<Skip> RecentSkips() => _skips.OldestFirst();

    /// <summary>Looks for the next good frame.</summary>
    /// <param name="input">What has arrived and was not yet consumed.</param>
    /// <param name="consumed">Up to here nothing is needed again.</param>
    /// <param name="examined">Up to here everything was looked at; the end of the input when more is needed.</param>
    /// <param name="frame">The frame, valid until the next call.</param>
    /// <returns>Whether there is one. When true, ask again with the rest: there may be more.</returns>
    public bool TryRead(
        in ReadOnlySequence<byte> input, out SequencePosition consumed, out SequencePosition examined, out PadFrame frame)
    {
        var rest = input;
        while (TryCutStretch(ref rest, out var stretch))
        {
            var offset = _bytes;
            _bytes += stretch.Length + 1;
            if (!TryAccept(stretch, offset, out frame))
                continue;
            consumed = examined = rest.Start;
            return true;
        }
        consumed = rest.Start;
        examined = input.End;
        frame = default;
        return false;
    }

    bool TryCutStretch(ref ReadOnlySequence<byte> rest, out ReadOnlySequence<byte> stretch)
    {
        while (true)
        {
            if (_insideTooLong)
                DropToDelimiter(ref rest);
            var window = rest.Length > PadFrameWriter.MaxFrameLength ? rest.Slice(0, PadFrameWriter.MaxFrameLength) : rest;
            if (window.PositionOf(Delimiter) is { } end)
            {
                stretch = window.Slice(0, end);
                rest = rest.Slice(rest.GetPosition(1, end));
                return true;
            }
            if (window.Length < PadFrameWriter.MaxFrameLength)
            {
                stretch = default;
                return false;
            }
            _insideTooLong = true;
            _missingFromDamaged = 0;
            _badFrames++;
            _skips.Add(new Skip(_bytes, 0, SkipReason.TooLong));
        }
    }

    void DropToDelimiter(ref ReadOnlySequence<byte> rest)
    {
        var end = rest.PositionOf(Delimiter);
        var next = end is { } delimiter ? rest.GetPosition(1, delimiter) : rest.End;
        var dropped = rest.Slice(0, next).Length;
        rest = rest.Slice(next);
        _bytes += dropped;
        _skippedBytes += dropped;
        _skips.Extend(dropped);
        _insideTooLong = end is null;
        _sawDelimiter |= end is not null;
    }

    bool TryAccept(scoped in ReadOnlySequence<byte> sequence, long offset, out PadFrame frame)
    {
        frame = default;
        var isFirst = !_sawDelimiter;
        _sawDelimiter = true;
        var missingBefore = _missingFromDamaged;
        _missingFromDamaged = 0;
        var stretch = Flatten(sequence);
        if (stretch.IsEmpty)
            return false;

        var reason = Judge(stretch, out var body);
        if (reason == SkipReason.None && stretch.Length == missingBefore)
            reason = SkipReason.TailOfDamaged;
        if (reason != SkipReason.None)
        {
            Refuse(stretch, offset, isFirst ? SkipReason.BeforeFirstDelimiter : reason);
            return false;
        }

        var kind = (FrameKind)body[0];
        if (!PadBody.IsKnown(kind))
        {
            _unknownKinds++;
            return false;
        }
        _frames++;
        frame = new PadFrame(kind, body, offset);
        return true;
    }

    SkipReason Judge(ReadOnlySpan<byte> stretch, out ReadOnlySpan<byte> body)
    {
        body = default;
        if (stretch.Length < MinStretch)
            return SkipReason.TooShort;
        var encoded = stretch[..^FrameCheck.Length];
        if (!FrameCheck.IsGood(encoded, stretch[^FrameCheck.Length..]))
            return SkipReason.BadCheck;
        if (!Cobs.TryDecode(encoded, _body, out var length))
            return SkipReason.BadStuffing;
        body = _body.AsSpan(0, length);
        if (length < PadBody.MinLength || body[1] != length)
            return SkipReason.WrongLength;
        var kind = (FrameKind)body[0];
        return kind == FrameKind.None || (PadBody.IsKnown(kind) && !PadBody.HasShape(kind, body))
            ? SkipReason.Malformed
            : SkipReason.None;
    }

    void Refuse(ReadOnlySpan<byte> stretch, long offset, SkipReason reason)
    {
        if (reason != SkipReason.BeforeFirstDelimiter)
            _badFrames++;
        _skippedBytes += stretch.Length + 1;
        _skips.Add(new Skip(offset, stretch.Length + 1, reason));
        _missingFromDamaged = MissingFrom(stretch);
    }

    // When a damaged byte became a delimiter, the bytes behind it pass for a frame of their own if the CRC stood at its
    // starting value there. The length that the front part tells says how long that false frame would be.
    static int MissingFrom(ReadOnlySpan<byte> front)
    {
        if (front.Length <= LengthPosition)
            return 0;
        var missing = front[LengthPosition] + 1 + FrameCheck.Length - (front.Length + 1);
        return missing >= MinStretch && FrameCheck.CanStartAfresh(front) ? missing : 0;
    }

    /// <summary>The same bytes in one piece.</summary>
    ReadOnlySpan<byte> Flatten(scoped in ReadOnlySequence<byte> sequence)
    {
        if (sequence.IsSingleSegment)
            return sequence.FirstSpan;
        sequence.CopyTo(_stretch);
        return _stretch.AsSpan(0, (int)sequence.Length);
    }
}
