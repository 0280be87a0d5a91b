using System.Buffers;

namespace ScaleLink.Protocol.Modbus;

/// <summary>
/// Finds a slave's reply in a stream of bytes. Frames are told by length and check, because adapters deliver in bursts that hide the
/// silences between frames: the question says how long its reply is, so a good frame is found behind any noise. It keeps no
/// input: what it has not consumed must come again at the head of the next input. Allocates nothing. One line, one thread.
/// </summary>
sealed class ModbusReplyDecoder
{
    internal const int ExceptionLength = 5;
    internal const byte ExceptionBit = 0x80;
    const int ShortestBad = 3;

    readonly byte[] _window = new byte[ModbusReplyWriter.MaxLength];
    readonly byte[] _question = new byte[ModbusRequest.Length];
    ModbusRequest _asked;
    bool _mayEcho;
    int _run;
    long _bytes, _frames, _echoes, _badFrames, _skippedBytes;

    enum Sort { NeedsMore, Noise, Echo, Frame }

    /// <summary>What the decoder has seen since it was made.</summary>
    public ModbusCounters Counters => new(_bytes, _frames, _echoes, _badFrames, _skippedBytes);

    /// <summary>A question has been sent: its reply is looked for from here on.</summary>
    public void Expect(in ModbusRequest request)
    {
        _asked = request;
        request.Write(_question);
        (_mayEcho, _run) = (true, 0);
    }

    /// <summary>Gives up what has arrived, for instance when the line has fallen silent inside a frame.</summary>
    public void Discard(long bytes)
    {
        for (; bytes > 0; bytes--)
            Skip();
        _run = 0;
    }

    /// <summary>Looks for the next good frame.</summary>
    /// <param name="input">What has arrived and was not yet consumed.</param>
    /// <param name="consumed">Up to here nothing is needed again.</param>
    /// <param name="examined">Up to here everything was looked at; the end of the input when more is needed.</param>
    /// <param name="reply">The frame, valid until the next call.</param>
    /// <returns>Whether there is one. When true, ask again with the rest: there may be more.</returns>
    public bool TryRead(
        in ReadOnlySequence<byte> input, out SequencePosition consumed, out SequencePosition examined, out ModbusReply reply)
    {
        var rest = input;
        while (!rest.IsEmpty)
        {
            var window = Flatten(rest);
            var sort = Judge(window, out var length, out reply);
            if (sort == Sort.NeedsMore)
                break;
            rest = rest.Slice(length);
            if (sort == Sort.Noise)
            {
                Skip();
                continue;
            }

            (_run, _mayEcho) = (0, false);
            _bytes += length;
            if (sort == Sort.Echo)
            {
                _echoes++;
                continue;
            }

            _frames++;
            consumed = examined = rest.Start;
            return true;
        }
        consumed = rest.Start;
        examined = input.End;
        reply = default;
        return false;
    }

    Sort Judge(ReadOnlySpan<byte> window, out int length, out ModbusReply reply)
    {
        length = 1;
        reply = default;
        if (_asked.Count == 0)
            return Sort.Noise;
        if (_mayEcho && IsStart(window, _question))
        {
            length = ModbusRequest.Length;
            return window.Length < length ? Sort.NeedsMore : Sort.Echo;
        }
        if (window[0] != _asked.Slave)
            return JudgeStray(window, ModbusReplyKind.OtherSlave, ref length, out reply);
        if (window.Length < ExceptionLength && IsHead(window))
            return Sort.NeedsMore;
        if (window[1] == ((byte)_asked.Function | ExceptionBit))
            return JudgeException(window, ref length, out reply);
        if (window[1] == (byte)_asked.Function && window[2] == 2 * _asked.Count)
            return JudgeReply(window, ref length, out reply);
        return JudgeStray(window, ModbusReplyKind.OtherLength, ref length, out reply);
    }

    // Too short to be judged, but all of it could begin a reply.
    bool IsHead(ReadOnlySpan<byte> window) =>
        window.Length < 2
        || (window[1] == (byte)_asked.Function && (window.Length < 3 || window[2] == 2 * _asked.Count))
        || window[1] == ((byte)_asked.Function | ExceptionBit);

    Sort JudgeReply(ReadOnlySpan<byte> window, scoped ref int length, out ModbusReply reply)
    {
        reply = default;
        if (window.Length < _asked.ReplyLength)
            return Sort.NeedsMore;
        if (!RtuCheck.IsGood(window[.._asked.ReplyLength]))
            return Sort.Noise;
        length = _asked.ReplyLength;
        reply = new ModbusReply(ModbusReplyKind.Registers, window[0], window.Slice(3, 2 * _asked.Count), 0);
        return Sort.Frame;
    }

    static Sort JudgeException(ReadOnlySpan<byte> window, scoped ref int length, out ModbusReply reply)
    {
        reply = default;
        if (!RtuCheck.IsGood(window[..ExceptionLength]))
            return Sort.Noise;
        length = ExceptionLength;
        reply = new ModbusReply(ModbusReplyKind.Exception, window[0], default, (ModbusException)window[2]);
        return Sort.Frame;
    }

    // A frame that nobody asked for is taken when it is whole, and never waited for: the bytes may be noise before a reply.
    static Sort JudgeStray(ReadOnlySpan<byte> window, ModbusReplyKind kind, scoped ref int length, out ModbusReply reply)
    {
        reply = default;
        if (window.Length < ExceptionLength || window[0] is < ModbusRequest.LowestSlave or > ModbusRequest.HighestSlave
            || !ModbusRequest.IsRead((ModbusFunction)window[1]) || window[2] is 0 or > 2 * ModbusRequest.MostRegisters
            || (window[2] & 1) != 0)
            return Sort.Noise;
        var whole = 5 + window[2];
        if (window.Length < whole || !RtuCheck.IsGood(window[..whole]))
            return Sort.Noise;
        length = whole;
        reply = new ModbusReply(kind, window[0], window.Slice(3, window[2]), 0);
        return Sort.Frame;
    }

    void Skip()
    {
        _bytes++;
        _skippedBytes++;
        if (++_run == ShortestBad)
            _badFrames++;
    }

    static bool IsStart(ReadOnlySpan<byte> window, ReadOnlySpan<byte> whole)
    {
        var length = Math.Min(window.Length, whole.Length);
        return window[..length].SequenceEqual(whole[..length]);
    }

    /// <summary>As much of the sequence as the longest frame, in one piece.</summary>
    ReadOnlySpan<byte> Flatten(scoped in ReadOnlySequence<byte> sequence)
    {
        var head = sequence.Length > _window.Length ? sequence.Slice(0, _window.Length) : sequence;
        if (head.IsSingleSegment)
            return head.FirstSpan;
        head.CopyTo(_window);
        return _window.AsSpan(0, (int)head.Length);
    }
}
