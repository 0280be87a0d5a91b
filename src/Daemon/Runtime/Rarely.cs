namespace ScaleLink.Daemon.Runtime;

/// <summary>Lets a line of the log through at once, then after two minutes, and each time after twice as long: what happens all day would bury the rest.</summary>
/// <param name="time">The clock.</param>
internal sealed class Rarely(TimeProvider time)
{
    private static readonly TimeSpan FirstPause = TimeSpan.FromMinutes(2);

    private TimeSpan _pause;
    private long _toldAt;
    private int _keptBack;

    /// <summary>Whether this one goes through; asked once for each.</summary>
    /// <param name="before">How many were kept back since the last that did.</param>
    public bool Ask(out int before)
    {
        var now = time.GetTimestamp();
        before = _keptBack;
        if (time.GetElapsedTime(_toldAt, now) < _pause)
        {
            _keptBack++;
            return false;
        }

        (_toldAt, _keptBack) = (now, 0);
        _pause = _pause == TimeSpan.Zero ? FirstPause : _pause * 2;
        return true;
    }
}
