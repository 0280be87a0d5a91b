using System.Collections.Concurrent;

namespace ScaleLink.Client.Calibration;

/// <summary>
/// Lines on standard input while a calibration procedure runs without a screen: an empty line or <c>record</c>, <c>back</c>, <c>skip</c>,
/// <c>again N</c>, <c>finish</c>, <c>empty REASON</c>. The end of the input means nothing: the calibration procedure goes on by itself.
/// </summary>
internal sealed class ScriptOrders
{
    private readonly ConcurrentQueue<string> _lines = new();
    private volatile bool _isOver;

    public ScriptOrders(TextReader input) => new Thread(() => Read(input)) { IsBackground = true, Name = "orders" }.Start();

    /// <summary>No line will come any more, and none is left.</summary>
    public bool HasEnded => _isOver && _lines.IsEmpty;

    public bool TryTake(out string order)
    {
        var isThere = _lines.TryDequeue(out var line);
        order = line ?? "";
        return isThere;
    }

    // A console cannot be read with a token: the thread ends with its input or with the program.
    private void Read(TextReader input)
    {
        while (input.ReadLine() is { } line)
            _lines.Enqueue(line.Trim());
        _isOver = true;
    }
}
