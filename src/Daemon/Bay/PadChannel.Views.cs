using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>What others may see of a pad: the load of a block, its cells at rest, its tilt, how it stands.</summary>
internal sealed partial class PadChannel
{
    private const long LoadWindowNs = 500 * Nanoseconds.PerMillisecond;
    private const long RestWindowNs = (long)(PadRest.WindowSeconds * Nanoseconds.PerSecond);
    // Straight lines may bridge a lost frame or two; a longer hole is no load.
    private const long LongestGapNs = 250 * Nanoseconds.PerMillisecond;
    private const long RateWindowNs = 2 * Nanoseconds.PerSecond;

    /// <summary>What the pad carried over a block of time.</summary>
    public PadBlock Block(long fromNs, long toNs)
    {
        lock (_gate)
        {
            var counts = _state == PadState.Live ? _ring.MeanOver(fromNs, toNs, LongestGapNs) : null;
            var load = _scale.Kg(counts);
            var (tilt, uncertainty) = Configuration.CorrectTilt && load is { } kg ? _tilt.Correct(kg, _faults, _clock.NowNs) : default;
            return new PadBlock(load + (tilt ?? 0), _scale.ZeroKg, tilt, _scale.Uncertainty(load ?? 0, _temperature), _isTimed, _state, _faults.Present)
            {
                TiltUncertaintyKg = uncertainty,
                Calibration = _calibrationId,
                IsCalibrated = _scale.Calibration?.IsCalibrated == true,
            };
        }
    }

    /// <summary>The last seconds cell by cell, and how far the load has come to rest; nothing unless the pad is live.</summary>
    /// <param name="found">Kilograms per count that a procedure has found for a pad without a sensitivity.</param>
    public PadObservation? Observe(double? found = null)
    {
        lock (_gate)
        {
            if (_state != PadState.Live || _identity is not { } identity || _ring.Count == 0)
                return null;
            var (cells, isWhole) = _ring.CellsSince(_newestNs - RestWindowNs, LongestGapNs);
            var kgPerCount = _scale.Calibration?.SpanKgPerCount ?? found ?? identity.CapacityKg * 1e-6;
            return PadObservation.Of(identity, cells, isWhole, kgPerCount, new PadReading
            {
                Time = _clock.ToUtc(_newestNs),
                CellCounts = [],
                CellSpreads = [],
                Settled = false,
                SaturatedCells = StatusFaults.CellsAtLimit(_status),
                TemperatureC = _temperature,
                PitchDeg = _tilt.Pitch,
                RollDeg = _tilt.Roll,
            });
        }
    }

    /// <summary>How it tilts by its inclinometer alone; nothing unless the pad is live.</summary>
    public TiltObservation? ObserveTilt()
    {
        lock (_gate)
            return _state == PadState.Live && _identity is { } identity && _tilt.Recent(_clock.NowNs) is var (samples, isWhole)
                ? new TiltObservation(identity, samples, isWhole, _temperature)
                : null;
    }

    /// <summary>How the pad stands now.</summary>
    public PadSnapshot Snapshot()
    {
        lock (_gate)
        {
            var now = _clock.NowNs;
            var isLive = _state == PadState.Live;
            var (load, uncertainty) = isLive && _ring.Count > 0 ? _scale.MeanOf(_ring.Since(_newestNs - LoadWindowNs), _temperature) : (null, null);
            return new PadSnapshot
            {
                Configuration = Configuration,
                State = _state,
                Identity = _identity,
                AgeNs = _newestNs > long.MinValue ? now - _newestNs : null,
                MeasuredRateHz = isLive ? MeasuredRate() : null,
                LoadKg = load,
                LoadUncertaintyKg = uncertainty,
                PitchDegrees = isLive ? _tilt.Pitch : null,
                RollDegrees = isLive ? _tilt.Roll : null,
                TemperatureCelsius = isLive ? _temperature : null,
                InclinometerZero = _tilt.Zero,
                Zero = _scale.Zero,
                Calibration = _scale.Calibration,
                LastCalibration = _identity is null ? LastCalibration() : null,
                Counters = _totals.With(_sequence),
                ClockDriftPpm = isLive && _isTimed ? _map.DriftPpm : null,
                TransportJitterMs = isLive && _isTimed ? _map.JitterMs : null,
                FreezeEvidence = isLive ? _freeze.Evidence(_scale.Calibration?.SpanKgPerCount ?? 0) : null,
                Faults = _faults.Present,
            };
        }
    }

    // Asked of the ledger once each time that the pad is away.
    private PadCalibration? LastCalibration()
    {
        if (!_isLastKnown)
            (_last, _isLastKnown) = ((_lastSerial ?? Configuration.SerialNumber) is { } serial ? _records.Calibrations.InEffect(serial) : _records.Calibrations.LastAt(Corner), true);
        return _last;
    }

    private double? MeasuredRate()
    {
        var count = _ring.Count > 0 ? _ring.Since(_newestNs - RateWindowNs).Length : 0;
        return count > 1 ? count * (double)Nanoseconds.PerSecond / RateWindowNs : null;
    }
}
