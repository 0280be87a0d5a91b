using System.Buffers;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Daemon.Links.Polling;

/// <summary>
/// Asks the slaves of one line in turn and hands their answers on. One question is open at a time; what is heard outside of it is looked at too,
/// for it shows a second slave under the same address, or a slow one.
/// </summary>
internal sealed class ModbusConversation(IReadOnlyList<BusSlave> slaves, LineTiming timing) : IConversation
{
    // A byte or two when the drivers of the line switch are no answer.
    private const int SwitchingNoise = 2;
    private const int ShortestFrame = 5;
    private const long LateNs = 10 * Nanoseconds.PerMillisecond;

    private readonly ModbusReplyDecoder _decoder = new();
    private readonly ReceiveBuffer _buffer = new();
    private readonly byte[] _question = new byte[ModbusRequest.Length];
    private BusSlave? _asked;
    private bool _isOpen, _hasAnswered;
    private long _deadlineNs, _quietUntilNs, _lastByteNs, _heardBefore, _skippedBefore, _skippedAtQuestion;

    public void Opened(long nowNs)
    {
        foreach (var slave in slaves)
            slave.Opened(nowNs);
    }

    public void Received(ReadOnlySpan<byte> bytes, long nowNs)
    {
        _buffer.Add(bytes);
        _lastByteNs = nowNs;
        _asked?.Sink.Received(bytes.Length);
        _buffer.Drain(all => Decode(all, nowNs));
    }

    public Turn Next(long nowNs)
    {
        if (_isOpen && !IsAnswerOver(nowNs, out var againNs))
            return new Turn(default, againNs);
        if (nowNs < _quietUntilNs)
            return new Turn(default, _quietUntilNs);
        foreach (var slave in slaves)
            if (slave.HeldUntilNs <= nowNs)
                slave.Confirm(nowNs);
        return Ask(nowNs);
    }

    private Turn Ask(long nowNs)
    {
        var next = _asked is { IsInRound: true } ? _asked : slaves.MinBy(s => s.DueNs)!;
        if (next.DueNs > nowNs && !next.IsInRound)
            return new Turn(default, Math.Min(next.DueNs, slaves.Min(s => s.HeldUntilNs)));
        // What it says next takes the place of what it has said before.
        next.Confirm(nowNs);
        var question = next.Question;
        question.Write(_question);
        DropRest();
        _decoder.Expect(question);
        (_asked, _isOpen, _hasAnswered) = (next, true, false);
        _heardBefore = Heard();
        _skippedAtQuestion = _decoder.Counters.SkippedBytes;
        _deadlineNs = nowNs + next.TimeoutNs + timing.CharactersNs(ModbusRequest.Length + question.ReplyLength);
        return new Turn(_question, _deadlineNs);
    }

    // A slave that has said nothing is silent; one whose bytes stopped in the middle, or made no frame, has been damaged.
    private bool IsAnswerOver(long nowNs, out long againNs)
    {
        var hasBytes = Heard() - _heardBefore + _buffer.Count > SwitchingNoise;
        var endNs = hasBytes ? Math.Min(_deadlineNs, _lastByteNs + timing.BrokenOffNs) : _deadlineNs;
        // Woken late, the answer may lie in the system's buffer: it is given the time to come up before anybody is blamed.
        if (nowNs - endNs > LateNs)
            endNs = _deadlineNs = _lastByteNs = nowNs + LateNs;
        againNs = endNs;
        if (nowNs < endNs)
            return false;
        DropRest();
        if (hasBytes)
            _asked!.Damaged(nowNs);
        else
            _asked!.Missed(nowNs);
        Close(nowNs);
        return true;
    }

    private SequencePosition Decode(in ReadOnlySequence<byte> all, long nowNs)
    {
        var rest = all;
        SequencePosition consumed;
        while (_decoder.TryRead(rest, out consumed, out _, out var reply))
        {
            Take(reply, nowNs);
            rest = rest.Slice(consumed);
        }

        return consumed;
    }

    private void Take(in ModbusReply reply, long nowNs)
    {
        if (reply.Kind == ModbusReplyKind.OtherSlave)
        {
            var address = reply.Slave;
            slaves.FirstOrDefault(s => s.Address == address)?.AnsweredUnasked(nowNs);
            return;
        }

        if (!_isOpen)
        {
            _asked?.AnsweredUnasked(nowNs);
            return;
        }

        // A whole frame's worth of garbage before it may have been another slave's answer to the same question.
        if (_decoder.Counters.SkippedBytes - _skippedAtQuestion >= ShortestFrame)
        {
            _asked!.Damaged(nowNs);
            Close(nowNs);
            return;
        }

        if (reply.Kind == ModbusReplyKind.Registers)
            _asked!.Took(reply.Data, nowNs);
        else if (reply.Kind == ModbusReplyKind.Exception)
            _asked!.Refused(reply.Exception, nowNs);
        else
            _asked!.GaveOtherLength(nowNs);
        _hasAnswered = true;
        Close(nowNs);
    }

    private void Close(long nowNs)
    {
        _isOpen = false;
        _quietUntilNs = nowNs + timing.GapNs;
        _asked!.Skipped(_decoder.Counters.SkippedBytes - _skippedBefore, _hasAnswered);
        _skippedBefore = _decoder.Counters.SkippedBytes;
    }

    /// <summary>Bytes of every sort but echoes.</summary>
    private long Heard() => _decoder.Counters.Bytes - _decoder.Counters.Echoes * ModbusRequest.Length;

    private void DropRest()
    {
        _decoder.Discard(_buffer.Count);
        _buffer.Clear();
    }
}
