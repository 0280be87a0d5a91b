using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.Calibration.Results;
using ScaleLink.Weighing.Zeros;

namespace ScaleLink.Daemon.Workflows.Zeros;

/// <summary>The zero of one pad between two visits of the car.</summary>
internal sealed class PadZeroWatch(PadChannel pad, ZeroTrackingOptions tracking, double raisedBelowKg, IZeroStore store, BayClock clock)
{
    // One interval of the usual accuracy class: more than that goes into every corner load.
    private const double LimitKg = ClassGrade.UsualIntervalKg;

    private bool _wasLoaded;
    private double _writtenKg;
    private DateTimeOffset? _zeroAt;
    private long _lookedNs;

    /// <summary>To be called about once a second.</summary>
    public void Look()
    {
        var now = clock.NowNs;
        var elapsed = TimeSpan.FromMicroseconds((now - _lookedNs) / 1000.0);
        _lookedNs = now;
        if (pad.Standing.Zero is not { } zero || pad.Snapshot().LoadKg is not { } load)
            return;
        if (zero.TakenAt != _zeroAt)
            (_zeroAt, _writtenKg) = (zero.TakenAt, store.TrackedKg(zero));
        if (Math.Abs(load) >= raisedBelowKg)
            _wasLoaded = true;
        else if (pad.Observe() is { Rest.Settled: true } seen)
            Empty(zero, load, seen, elapsed);
    }

    private void Empty(Bay.ZeroPoint zero, double load, PadObservation seen, TimeSpan elapsed)
    {
        if (_wasLoaded)
            Check(zero, load);
        _wasLoaded = false;
        if (!tracking.Enabled)
            return;
        var sum = pad.Follow(seen, elapsed, tracking).SumKg;
        if (Math.Abs(sum - _writtenKg) < tracking.IntervalKg / 2)
            return;
        store.AppendTrack(zero, sum, Now);
        _writtenKg = sum;
    }

    private void Check(Bay.ZeroPoint zero, double load)
    {
        // Told before it is written: the disk may be full.
        if (Math.Abs(load) > LimitKg)
            pad.OnTrouble(PadStateCodes.EmptyPadReads, $"The car is off, and the empty pad reads {Kg(load):+0.00}.", "Look for something on the pad; then take a zero before the car comes back.", stops: false);
        else
            pad.OnTroubleOver(PadStateCodes.EmptyPadReads);
        store.AppendCheck(zero, load, Now);
    }

    private DateTimeOffset Now => clock.ToUtc(clock.NowNs);
}
