namespace CarOnPads.Pads;

/// <summary>
/// When a pad samples and what its clock says then. Instants are counted from the last start or change of rate, never
/// added up, so the mean rate is exact. A pad whose crystal is fast samples fast.
/// </summary>
sealed class SampleClock
{
    double _start;
    double _deviceStart;
    double _speed;
    long _index;

    public SampleClock(double start, double deviceMicroseconds, double hertz, double drift)
    {
        (_start, _deviceStart, Hertz, _speed) = (start, deviceMicroseconds, hertz, 1 + drift);
    }

    /// <summary>Samples a second of the pad's own time.</summary>
    public double Hertz { get; private set; }

    /// <summary>True time of the next sample, s.</summary>
    public double Next => _start + _index / (Hertz * _speed);

    /// <summary>What the pad's clock says at the next sample, microseconds, wrapping after 2^32.</summary>
    public uint DeviceMicroseconds => (uint)(ulong)Math.Round(_deviceStart + _index * 1e6 / Hertz);

    /// <summary>On to the next sample.</summary>
    public void Advance() => _index++;

    /// <summary>Goes on from the next sample with another rate or another drift.</summary>
    public void Change(double hertz, double drift)
    {
        (_start, _deviceStart, _index) = (Next, _deviceStart + _index * 1e6 / Hertz, 0);
        (Hertz, _speed) = (hertz, 1 + drift);
    }
}
