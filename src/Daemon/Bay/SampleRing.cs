using ScaleLink.Daemon.Links;

namespace ScaleLink.Daemon.Bay;

/// <summary>The newest samples of one pad: instant, counts added up, counts of the cells. Overwrites the oldest; adding allocates nothing.</summary>
internal sealed class SampleRing(int capacity)
{
    private readonly long[] _at = new long[capacity];
    private readonly double[] _counts = new double[capacity];
    private readonly CellCounts[] _cells = new CellCounts[capacity];
    private int _next;

    /// <summary>Samples held.</summary>
    public int Count { get; private set; }

    /// <summary>Instant of the newest sample, ns; meaningless while empty.</summary>
    public long NewestNs => _at[Index(Count - 1)];

    /// <summary>Instant of the oldest sample held, ns; meaningless while empty.</summary>
    public long OldestNs => _at[Index(0)];

    /// <summary>Instants must rise.</summary>
    public void Add(long atNs, double counts, in CellCounts cells = default)
    {
        (_at[_next], _counts[_next], _cells[_next]) = (atNs, counts, cells);
        _next = (_next + 1) % capacity;
        Count = Math.Min(Count + 1, capacity);
    }

    public void Clear() => (Count, _next) = (0, 0);

    /// <summary>
    /// Mean counts over a span, from straight lines between the samples, so that one rule serves 10 and 1000 samples a second.
    /// Nothing when the samples do not reach across the span, or leave a hole in it longer than <paramref name="longestGapNs"/>.
    /// </summary>
    public double? MeanOver(long fromNs, long toNs, long longestGapNs)
    {
        if (Count < 2 || OldestNs > fromNs || NewestNs < toNs)
            return null;
        var i = Count - 1;
        while (_at[Index(i)] > fromNs)
            i--;
        var area = 0.0;
        for (; i + 1 < Count && _at[Index(i)] < toNs; i++)
        {
            var (t0, t1) = (_at[Index(i)], _at[Index(i + 1)]);
            if (t1 - t0 > longestGapNs)
                return null;
            var (from, to) = (Math.Max(t0, fromNs), Math.Min(t1, toNs));
            var middle = _counts[Index(i)] + (_counts[Index(i + 1)] - _counts[Index(i)]) * (((from + to) * 0.5 - t0) / (t1 - t0));
            area += middle * (to - from);
        }

        return area / (toNs - fromNs);
    }

    /// <summary>Copies the counts since an instant, oldest first.</summary>
    public double[] Since(long fromNs) => Copy(_counts, FirstSince(fromNs));

    /// <summary>Copies the counts of the cells since an instant, oldest first; not whole when there is a hole longer than <paramref name="longestGapNs"/>.</summary>
    public (CellCounts[] Cells, bool IsWhole) CellsSince(long fromNs, long longestGapNs)
    {
        var first = FirstSince(fromNs);
        var (isWhole, before) = (first < Count, fromNs);
        for (var i = first; i < Count; i++)
        {
            isWhole &= _at[Index(i)] - before <= longestGapNs;
            before = _at[Index(i)];
        }

        return (Copy(_cells, first), isWhole);
    }

    private int FirstSince(long fromNs)
    {
        var first = Count;
        while (first > 0 && _at[Index(first - 1)] >= fromNs)
            first--;
        return first;
    }

    private T[] Copy<T>(T[] from, int first)
    {
        var copy = new T[Count - first];
        for (var k = 0; k < copy.Length; k++)
            copy[k] = from[Index(first + k)];
        return copy;
    }

    private int Index(int position) => (_next - Count + position + capacity) % capacity;
}
