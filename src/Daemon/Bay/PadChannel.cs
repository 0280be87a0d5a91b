using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;
using ScaleLink.Protocol.PadFrames;
using ScaleLink.Weighing.Freezing;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// One pad, across every unplugging: its state, its newest samples, its zero, its faults.
/// The link's thread brings bytes and samples; the weigher asks for blocks; the faces ask for snapshots. One lock guards it all.
/// </summary>
internal sealed partial class PadChannel : IPadSource
{
    private const int RingSamples = 4096;

    private readonly Lock _gate = new();
    private readonly BayClock _clock;
    private readonly PadRecords _records;
    private readonly PadScale _scale;
    private readonly SampleRing _ring = new(RingSamples);
    private readonly FaultSet _faults = new();
    private readonly SilenceWatch _silence = new();
    private readonly SequenceTrack _sequence = new();
    private readonly TransportWatch _transport = new();
    private readonly LinkTotals _totals = new();
    private readonly Tilt _tilt = new();
    private readonly FreezeWatch _freeze = new();
    private DeviceClockMap _map = new();
    private PadIdentity? _identity;
    private PadState _state = PadState.Absent;
    private double? _temperature;
    private PadStatus _status;
    private string _calibrationId = "";
    private bool _isTimed;
    // It was silent: who speaks next is asked who it is, for cables are swapped behind ports that stay open.
    private bool _mayBeAnother;
    private long _newestNs = long.MinValue;
    // Who was here before, and its calibration, for the time in which nobody is.
    private string? _lastSerial;
    private PadCalibration? _last;
    private bool _isLastKnown;

    /// <summary>A pad of the bay file, absent until its link opens.</summary>
    public PadChannel(PadConfiguration configuration, BayClock clock, PadRecords records)
    {
        ArgumentNullException.ThrowIfNull(records);
        (Configuration, _clock, _records, _scale) = (configuration, clock, records, new PadScale(records.Here));
        if (configuration.Tilt is not null)
            TiltSource = new TiltFeed(this, clock);
    }

    /// <summary>Its place in the bay file.</summary>
    public PadConfiguration Configuration { get; }

    /// <summary>The corner it stands under.</summary>
    public Corner Corner => Configuration.Corner;

    /// <inheritdoc/>
    public string Name => Corner.ToString();

    /// <inheritdoc/>
    public bool IsUnknown
    {
        get
        {
            lock (_gate)
                return _identity is null || _mayBeAnother;
        }
    }

    /// <summary>Takes the tilt when it has a source of its own.</summary>
    public TiltFeed? TiltSource { get; }

    /// <summary>Every sample, for readers of the sample feed.</summary>
    public Broadcast<TakenSample> Samples { get; } = new();

    /// <summary>Told when state or faults change; called outside the lock.</summary>
    public event Action? Changed;

    /// <inheritdoc/>
    public void LinkOpened(Func<ProtocolCounters> counters) => Change(() =>
    {
        _totals.Begin(counters);
        // Opened again because it is silent: it is so until it speaks.
        var wasSilent = _state == PadState.Silent && _faults.Has(LinkCodes.PadSilent);
        if (!wasSilent)
        {
            _state = PadState.Waiting;
            _silence.Heard();
        }

        _transport.Restart();
        _faults.ClearAll(code => LinkCodes.Area.Holds(code) && !(wasSilent && code == LinkCodes.PadSilent) || PadCodes.Area.Holds(code) && code != PadCodes.TiltUnknown);
        ForgetPad();
        return true;
    });

    /// <summary>The pad is absent from now on.</summary>
    public void LinkFailed(Diagnostic fault) => Change(() =>
    {
        var before = _state;
        _state = PadState.Absent;
        _totals.End();
        ForgetPad();
        _faults.ClearAll(code => LinkCodes.Area.Holds(code) && code != fault.Code);
        return _faults.Raise(fault.Code, fault.Message, fault.Remedy, _clock.NowNs) || before != PadState.Absent;
    });

    /// <inheritdoc/>
    public void Received(int bytes)
    {
        lock (_gate)
            _totals.Received(bytes);
    }

    /// <inheritdoc/>
    public void OnIdentity(PadIdentity identity) => Change(() =>
    {
        ArgumentNullException.ThrowIfNull(identity);
        if (identity.BootId != _identity?.BootId)
        {
            _map = new DeviceClockMap();
            _sequence.Restart();
            RestartFreeze();
        }

        if (Configuration.SerialNumber is { } wanted && wanted != identity.SerialNumber)
        {
            Refuse(PadCodes.WrongPad, $"Pad {identity.SerialNumber} is on this port; {Configuration.Corner} wants {wanted}.", "Swap the cables, or correct serial_number in the bay file.");
        }
        else
        {
            // The right one, perhaps after a wrong one: a refusal belongs to who was there.
            if (_faults.Clear(PadCodes.WrongPad) | _faults.Clear(PadCodes.FrameVersionUnknown))
                _state = PadState.Waiting;
            if (!identity.IsSamePad(_identity))
                Recall(identity);
        }

        var isNews = identity != _identity;
        (_identity, _mayBeAnother) = (identity, false);
        return isNews;
    });

    /// <inheritdoc/>
    public void OnRefusal(Code code, Sentence message, Sentence remedy) => Change(() =>
    {
        Refuse(code, message, remedy);
        return true;
    });

    /// <inheritdoc/>
    public void OnTrouble(Code code, Sentence message, Sentence remedy, bool stops) => Change(() =>
    {
        var before = _state;
        if (stops && _state is PadState.Live or PadState.Waiting)
            _state = PadState.Silent;
        if (stops)
            _ring.Clear();
        // The one code that says no more than this one.
        if (stops)
            _faults.Clear(LinkCodes.PadSilent);
        return _faults.Raise(code, message, remedy, _clock.NowNs) || before != _state;
    });

    /// <inheritdoc/>
    public void OnTroubleOver(Code code) => Change(() => _faults.Clear(code));

    /// <summary>A tilt from its own source; absent values: it is not known any more.</summary>
    public void TakeTilt(double? pitch, double? roll)
    {
        lock (_gate)
            _tilt.Add(pitch, roll, _clock.NowNs);
    }

    /// <inheritdoc/>
    public void OnSample(in RawSample sample)
    {
        bool isNews;
        TakenSample taken;
        lock (_gate)
        {
            _silence.Heard();
            _totals.Sampled();
            // Without a hello nobody knows whose samples these are.
            if (_identity is null)
                return;
            if (_state == PadState.Refused)
            {
                _transport.Heard(_faults);
                return;
            }

            if (sample.Sequence is { } sequence && !_sequence.Accept(sequence))
                return;
            var stillBefore = _freeze.Still;
            taken = Take(sample);
            isNews = _state != PadState.Live | _transport.Heard(_faults);
            isNews |= StatusFaults.Apply(sample.Status, _faults, taken.AtNs) | (_freeze.Still != stillBefore);
            _state = PadState.Live;
        }

        Samples.Publish(taken);
        if (isNews)
            Changed?.Invoke();
    }

    /// <summary>Judges silence and damage; called often by the weigher.</summary>
    public void Tick(long nowNs)
    {
        bool isNews;
        lock (_gate)
        {
            var isSilent = _silence.Tick(nowNs, _identity?.RateHz ?? 0);
            _mayBeAnother |= isSilent && Configuration.Source.Protocol == ProtocolKind.PadFrames;
            isNews = isSilent && _state is PadState.Live or PadState.Waiting;
            if (isNews)
                FallSilent(nowNs);
            isNews |= _totals.IsOpen && _transport.Tick(_totals.Frames, _sequence.Missed, _faults, nowNs);
        }

        TiltSource?.Tick(nowNs);
        if (isNews)
            Changed?.Invoke();
    }

    /// <summary>Whether a block that ends then need wait for this pad no longer.</summary>
    public bool HasReached(long ns)
    {
        lock (_gate)
            return _state != PadState.Live || _newestNs >= ns;
    }

    /// <summary>Who the pad is, and the calibration and zero in effect.</summary>
    public (PadIdentity? Identity, PadCalibration? Calibration, ZeroPoint? Zero) Standing
    {
        get
        {
            lock (_gate)
                return (_identity, _scale.Calibration, _scale.Zero);
        }
    }

    /// <summary>Puts a zero into effect once it is in the ledger.</summary>
    public void Adopt(ZeroPoint zero) => Change(() =>
    {
        if (_identity?.SerialNumber != zero.SerialNumber)
            return false;
        _scale.Use(zero);
        Recognition.Tell(_scale, _faults, _clock.NowNs);
        return true;
    });

    /// <summary>Puts the zero of its inclinometer into effect once it is in the ledger; nothing: it was cleared.</summary>
    public void Adopt(string serialNumber, SavedInclinometerZero? zero) => Change(() =>
    {
        if (_identity?.SerialNumber != serialNumber)
            return false;
        _tilt.Zero = zero;
        return true;
    });

    /// <summary>Lets zero tracking go on by one step; <paramref name="seen"/> has to be of an empty pad.</summary>
    public ZeroTrack Follow(PadObservation seen, TimeSpan elapsed, ZeroTrackingOptions options)
    {
        ArgumentNullException.ThrowIfNull(seen);
        lock (_gate)
        {
            if (_identity == seen.Identity && _scale.Calibration is { } c && _scale.Kg(c.Counts([.. seen.Reading.CellCounts])) is { } load)
                _scale.Track = ZeroTracking.Step(_scale.Track, load, seen.Rest.Settled, elapsed, c.CapacityKg, options);
            return _scale.Track;
        }
    }

    /// <summary>Puts what the ledger holds of this pad into effect; after a calibration was adopted.</summary>
    public void Recognise() => Change(() =>
    {
        if (_identity is not { } identity)
            return false;
        Recall(identity);
        return true;
    });

    /// <summary>All its cells added up, as the weigher compares it with the other pads.</summary>
    public SeenValue Whole
    {
        get
        {
            lock (_gate)
                return _freeze.Whole;
        }
    }

    /// <summary>The other pads under the car moved and this one did not; its next sample says so.</summary>
    public void StandsStill()
    {
        lock (_gate)
            _freeze.Hold();
    }

    private TakenSample Take(in RawSample sample)
    {
        _isTimed = sample.DeviceMicroseconds is not null;
        // Without device time, samples of one burst still have to follow each other.
        _newestNs = sample.DeviceMicroseconds is { } device ? _map.Map(device, sample.ArrivalNs) : Math.Max(sample.ArrivalNs, _newestNs + 1);
        if (TiltSource is null)
            _tilt.Add(sample.PitchDegrees, sample.RollDegrees, _newestNs);
        _temperature = sample.TemperatureCelsius;
        _status = sample.Status;
        if (!IsSound(sample))
            return new TakenSample(sample, _newestNs, null);
        var counts = _scale.Counts(sample.Counts, sample.Cells);
        _ring.Add(_newestNs, counts, sample.Counts);
        return new TakenSample(sample, _newestNs, _scale.Kg(counts));
    }

    // A number that stands still is no load, however fresh its samples are.
    private bool IsSound(in RawSample sample)
    {
        if (!StatusFaults.CanWeigh(sample.Status))
        {
            _freeze.Interrupt();
            return false;
        }

        if (_freeze.Add(sample, _newestNs))
        {
            _ring.Clear();
            StatusFaults.ApplyStill(_freeze.Still, sample.Cells, _faults, _newestNs);
        }

        return _freeze.Still == 0;
    }

    private void FallSilent(long nowNs)
    {
        _state = PadState.Silent;
        _ring.Clear();
        TransportWatch.Silent(hasBytes: _totals.HasBytesSinceSample, _faults, nowNs);
    }

    private void Refuse(Code code, Sentence message, Sentence remedy)
    {
        _state = PadState.Refused;
        _ring.Clear();
        _faults.Raise(code, message, remedy, _clock.NowNs);
    }

    private void Recall(PadIdentity identity)
    {
        // Sums of other trims do not mix.
        _ring.Clear();
        Recognition.Of(identity, Configuration, _records, _scale, _faults, _clock.NowNs);
        _calibrationId = _scale.Calibration?.Identity ?? "";
        (_lastSerial, _isLastKnown) = (identity.SerialNumber, false);
        _tilt.Zero = Recognition.InclinometerZero(identity, Configuration, _records);
    }

    // What hangs on the pad that was there: another one may come back on the same port.
    private void ForgetPad()
    {
        (_identity, _mayBeAnother) = (null, false);
        _scale.Forget();
        (_calibrationId, _tilt.Zero) = ("", null);
        _faults.ClearAll(Recognition.Codes.Contains);
        _ring.Clear();
        if (TiltSource is null)
            _tilt.Forget();
        _sequence.Restart();
        _map = new DeviceClockMap();
        RestartFreeze();
    }

    private void RestartFreeze()
    {
        _freeze.Restart();
        _faults.Clear(PadCodes.ValueStandsStill);
    }

    private void Change(Func<bool> change)
    {
        bool isNews;
        lock (_gate)
            isNews = change();
        if (isNews)
            Changed?.Invoke();
    }
}
