namespace ScaleLink.Daemon.Bay;

/// <summary>Counts what the pad's own numbering shows to be lost or repeated.</summary>
internal sealed class SequenceTrack
{
    // A step back by more than this is a pad that started anew, not a sample that came twice.
    private const uint LongestRepeat = 1000;

    private uint? _last;

    public long Missed { get; private set; }

    public long Repeated { get; private set; }

    /// <summary>False when the sample has been seen before and must not be used again.</summary>
    public bool Accept(uint sequence)
    {
        var step = _last is { } last ? sequence - last : 1;
        var back = unchecked(0u - step);
        if (_last is not null && back < LongestRepeat)
        {
            Repeated++;
            return false;
        }

        if (step < int.MaxValue)
            Missed += step - 1;
        _last = sequence;
        return true;
    }

    /// <summary>The pad has started anew: its numbering says nothing about what went before.</summary>
    public void Restart() => _last = null;
}
