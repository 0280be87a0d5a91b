using CarOnPads.Ports;
using ScaleLink.Protocol.Recordings;
using ScaleLink.Protocol.Modbus;

namespace CarOnPads.Replay;

/// <summary>
/// Slaves that speak when they are asked: a question that is in the link recording gets what came behind it, as long after it as then, in order. A host that
/// asks more often than then gets the last answer again, so that it may ask at its own pace.
/// </summary>
sealed class AnsweredPlaying : IPlaying
{
    readonly IPadPort _port;
    readonly byte[] _fromHost = new byte[4096];
    readonly List<byte> _heard = [];
    readonly Dictionary<string, Queue<Exchange>> _exchanges;
    readonly Queue<RecordingEvent> _cable;
    readonly PriorityQueue<ReadOnlyMemory<byte>, (long AtNs, int Order)> _answers = new();
    int _order;

    public AnsweredPlaying(IReadOnlyList<RecordingEvent> events, IPadPort port)
    {
        _port = port;
        _exchanges = Exchange.Of(events).GroupBy(e => e.Question).ToDictionary(g => g.Key, g => new Queue<Exchange>(g));
        _cable = new(events.Where(e => e.Kind is RecordingEventKind.HangUp or RecordingEventKind.Open));
    }

    public IPadPort Port => _port;

    public bool IsOver => _answers.Count == 0 && _cable.Count == 0 && _exchanges.Values.All(q => q.Count <= 1);

    public void AdvanceTo(long ns)
    {
        int read;
        while ((read = _port.Read(_fromHost)) > 0)
            Hear(_fromHost.AsSpan(0, read), ns);
        while (_cable.TryPeek(out var happened) && happened.AtNs <= ns)
            Cable.Play(_cable.Dequeue(), _port);
        while (_answers.TryPeek(out _, out var due) && due.AtNs <= ns)
            _port.Write(_answers.Dequeue().Span);
    }

    public void Dispose() => _port.Dispose();

    void Hear(ReadOnlySpan<byte> bytes, long ns)
    {
        _heard.AddRange(bytes);
        while (_heard.Count >= ModbusRequest.Length)
        {
            var frame = _heard.GetRange(0, ModbusRequest.Length).ToArray();
            var isQuestion = ModbusRequest.TryParse(frame, out _);
            if (isQuestion && _exchanges.TryGetValue(Convert.ToHexString(frame), out var exchanges))
                Answer(exchanges, ns);
            _heard.RemoveRange(0, isQuestion ? ModbusRequest.Length : 1);
        }
    }

    void Answer(Queue<Exchange> exchanges, long ns)
    {
        var exchange = exchanges.Count > 1 ? exchanges.Dequeue() : exchanges.Peek();
        foreach (var (afterNs, answer) in exchange.Answers)
            _answers.Enqueue(answer, (ns + afterNs, _order++));
    }
}
