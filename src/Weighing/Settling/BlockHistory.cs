namespace ScaleLink.Weighing.Settling;

/// <summary>
/// The newest blocks of the four pads. Each value is written twice, half a buffer apart, so that the newest ones always lie
/// side by side and no window has to wrap around.
/// </summary>
sealed class BlockHistory
{
    const int Capacity = 128;
    readonly double[] _values = new double[4 * 2 * Capacity];

    /// <summary>Blocks seen since the last <see cref="Clear"/>; the newest has the number <c>Count - 1</c>.</summary>
    public int Count { get; private set; }

    public void Add(in Corners block)
    {
        var at = Count % Capacity;
        foreach (var corner in Corners.All)
        {
            var pad = _values.AsSpan((int)corner * 2 * Capacity, 2 * Capacity);
            pad[at] = pad[at + Capacity] = block[corner];
        }
        Count++;
    }

    /// <summary>The newest <paramref name="length"/> blocks of one pad, oldest first, without the <paramref name="skip"/> newest.</summary>
    public ReadOnlySpan<double> Newest(Corner corner, int length, int skip = 0)
    {
        var end = (Count - 1 - skip) % Capacity + Capacity + 1;
        return _values.AsSpan((int)corner * 2 * Capacity + end - length, length);
    }

    /// <summary>Mean of the newest <paramref name="length"/> blocks.</summary>
    public Corners Mean(int length)
    {
        Span<double> mean = stackalloc double[4];
        foreach (var corner in Corners.All)
        {
            var sum = 0.0;
            foreach (var value in Newest(corner, length)) sum += value;
            mean[(int)corner] = sum / length;
        }
        return new(mean[0], mean[1], mean[2], mean[3]);
    }

    public void Clear() => Count = 0;
}
