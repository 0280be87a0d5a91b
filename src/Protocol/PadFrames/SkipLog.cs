namespace ScaleLink.Protocol.PadFrames;

/// <summary>The newest skips, in a ring that never grows.</summary>
sealed class SkipLog
{
    public const int Capacity = 16;

    readonly Skip[] _ring = new Skip[Capacity];
    long _written;

    public void Add(Skip skip) => _ring[_written++ % Capacity] = skip;

    /// <summary>Makes the newest skip longer. It stops growing at the end of its number's range.</summary>
    public void Extend(long bytes)
    {
        ref var newest = ref _ring[(_written - 1) % Capacity];
        newest = newest with { Length = (int)Math.Min(int.MaxValue, newest.Length + bytes) };
    }

    public Skip[] OldestFirst()
    {
        var count = (int)Math.Min(_written, Capacity);
        var skips = new Skip[count];
        for (var index = 0; index < count; index++)
            skips[index] = _ring[(_written - count + index) % Capacity];
        return skips;
    }
}
