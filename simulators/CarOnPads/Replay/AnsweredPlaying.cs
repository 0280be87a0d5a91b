using CarOnPads.Ports;
using ScaleLink.Protocol.Captures;
using ScaleLink.Protocol.Modbus;

namespace CarOnPads.Replay;

/// <summary>
/// Slaves that speak when they are asked: a question that is in the capture gets what came behind it, as long after it as then. Each answer is
/// given once, in order; a question that was asked no more often gets none.
/// </summary>
sealed class AnsweredPlaying : IPlaying
{
    readonly IPadPort _port;
    readonly byte[] _fromHost = new byte[4096];
    readonly List<byte> _heard = [];
    readonly Dictionary<string, Queue<Exchange>> _exchanges;
    readonly Queue<CaptureEvent> _cable;
    readonly PriorityQueue<ReadOnlyMemory<byte>, (long AtNs, int Order)> _answers = new();
    readonly long _endNs;
    int _order;

    public AnsweredPlaying(IReadOnlyList<CaptureEvent> events, IPadPort port)
    {
        (_port, _endNs) = (port, events.Count > 0 ? events[^1].AtNs : 0);
        _exchanges = Exchange.Of(events).GroupBy(e => e.Question).ToDictionary(g => g.Key, g => new Queue<Exchange>(g));
        _cable = new(events.Where(e => e.Kind is CaptureEventKind.HangUp or CaptureEventKind.Open));
    }

    public IPadPort Port => _port;

    // The host may ask less often than then: what counts is that its time has passed.
    public bool IsOver { get; private set; }

    public void AdvanceTo(long ns)
    {
        int read;
        while ((read = _port.Read(_fromHost)) > 0)
            Hear(_fromHost.AsSpan(0, read), ns);
        while (_cable.TryPeek(out var happened) && happened.AtNs <= ns)
            Cable.Play(_cable.Dequeue(), _port);
        while (_answers.TryPeek(out _, out var due) && due.AtNs <= ns)
            _port.Write(_answers.Dequeue().Span);
        IsOver = ns >= _endNs;
    }

    public void Dispose() => _port.Dispose();

    void Hear(ReadOnlySpan<byte> bytes, long ns)
    {
        _heard.AddRange(bytes);
        while (_heard.Count >= ModbusRequest.Length)
        {
            var frame = _heard.GetRange(0, ModbusRequest.Length).ToArray();
            var isQuestion = ModbusRequest.TryParse(frame, out _);
            if (isQuestion && _exchanges.TryGetValue(Convert.ToHexString(frame), out var queue) && queue.TryDequeue(out var exchange))
                foreach (var (afterNs, answer) in exchange.Answers)
                    _answers.Enqueue(answer, (ns + afterNs, _order++));
            _heard.RemoveRange(0, isQuestion ? ModbusRequest.Length : 1);
        }
    }
}
