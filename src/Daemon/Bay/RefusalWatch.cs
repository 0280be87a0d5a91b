namespace ScaleLink.Daemon.Bay;

/// <summary>Whether a source is understood: so many refused among the last twenty lines say no, twenty good ones in a row say yes again.</summary>
internal sealed class RefusalWatch(int most)
{
    private const int Remembered = 20;

    private readonly Queue<bool> _lines = new();
    private int _refused;
    private int _goodInARow;

    public bool IsBad { get; private set; }

    public void Add(int good, int refused)
    {
        for (var k = 0; k < Math.Min(refused, Remembered); k++)
            Note(isRefused: true);
        for (var k = 0; k < Math.Min(good, Remembered); k++)
            Note(isRefused: false);
    }

    private void Note(bool isRefused)
    {
        _lines.Enqueue(isRefused);
        _refused += isRefused ? 1 : 0;
        _goodInARow = isRefused ? 0 : _goodInARow + 1;
        if (_lines.Count > Remembered && _lines.Dequeue())
            _refused--;
        IsBad = IsBad ? _goodInARow < Remembered : _refused >= most;
    }
}
