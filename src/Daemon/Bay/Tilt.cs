using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.InclinometerZeros;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// The pad's inclinometer, smoothed: pads do not tilt quickly, and the noise of one sample would go into every load. Its tested zero is
/// taken off here and nowhere else. Not thread-safe: its pad guards it.
/// </summary>
internal sealed class Tilt
{
    private const double TimeConstantNs = 0.4 * Nanoseconds.PerSecond;
    private const long WindowNs = (long)(TiltRest.WindowSeconds * Nanoseconds.PerSecond);
    // A slow inclinometer on a bus may miss an answer.
    private const long SlackNs = Nanoseconds.PerSecond / 2;
    private readonly Queue<(long AtNs, double Pitch, double Roll)> _recent = new();
    private double? _pitch;
    private double? _roll;
    private long _atNs;
    private long _sinceNs;
    private long _newestNs;

    /// <summary>The tested zero; absent for an inclinometer that was never tested.</summary>
    public SavedInclinometerZero? Zero { get; set; }

    /// <summary>Degrees, the zero taken off; absent when it is not known.</summary>
    public double? Pitch => _pitch - (Zero?.Zero.PitchDeg ?? 0);

    /// <summary>Degrees, the zero taken off; absent when it is not known.</summary>
    public double? Roll => _roll - (Zero?.Zero.RollDeg ?? 0);

    public void Add(double? pitch, double? roll, long atNs)
    {
        var share = 1 - Math.Exp(-Math.Max(0, atNs - _atNs) / TimeConstantNs);
        (_pitch, _roll, _atNs) = (Follow(_pitch, pitch, share), Follow(_roll, roll, share), atNs);
        Keep(pitch, roll, atNs);
    }

    public void Forget()
    {
        (_pitch, _roll) = (null, null);
        _recent.Clear();
    }

    /// <summary>The last seconds as they came, and whether they reach over the window up to now.</summary>
    public ((double PitchDeg, double RollDeg)[] Samples, bool IsWhole) Recent(long nowNs) =>
        ([.. _recent.Select(r => (r.Pitch, r.Roll))], _recent.Count > 0 && nowNs - _newestNs < 2 * SlackNs && _newestNs - _sinceNs >= WindowNs);

    /// <summary>What the correction adds to a load and what the uncertainty about the tilt leaves in it, kg; no size when the tilt is not known or too large.</summary>
    public (double? SizeKg, double UncertaintyKg) Correct(double loadKg, FaultSet faults, long nowNs)
    {
        if (Pitch is not { } pitch || Roll is not { } roll)
            return default;
        var size = TiltCorrection.Size(loadKg, pitch, roll);
        faults.Set(size is null, PadCodes.TiltBeyondCorrection, $"The pad is tilted by more than {TiltCorrection.LimitDegrees:0.#} degrees: its load is not corrected.", "Level the pad.", nowNs);
        return (size, size is null ? 0 : TiltCorrection.Uncertainty(loadKg, pitch, roll, SavedInclinometerZero.UncertaintyDeg(Zero)));
    }

    private void Keep(double? pitch, double? roll, long atNs)
    {
        if (pitch is not { } p || roll is not { } r)
        {
            _recent.Clear();
            return;
        }

        // After a hole the window begins anew.
        if (_recent.Count == 0 || atNs - _newestNs > SlackNs)
        {
            _recent.Clear();
            _sinceNs = atNs;
        }

        _newestNs = atNs;
        _recent.Enqueue((atNs, p, r));
        while (_recent.Peek().AtNs < atNs - WindowNs)
            _recent.Dequeue();
    }

    // A sensor that falls silent takes its last angle with it: an old angle would look like a present one.
    private static double? Follow(double? old, double? value, double share) => old + share * (value - old) ?? value;
}
