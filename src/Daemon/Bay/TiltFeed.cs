using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// The tilt of a pad when it comes from somewhere else than its loads. A fault here takes the angles away and nothing more: loads go
/// on, without tilt correction and marked.
/// </summary>
internal sealed class TiltFeed : IPadSource
{
    private const long LongestAgeNs = Nanoseconds.PerSecond;

    private readonly PadChannel _pad;
    private readonly BayClock _clock;
    private readonly Lock _gate = new();
    private long _heardNs;
    private bool _isKnown;

    internal TiltFeed(PadChannel pad, BayClock clock) => (_pad, _clock, _heardNs) = (pad, clock, clock.NowNs);

    /// <inheritdoc/>
    public string Name => $"{_pad.Corner} tilt";

    /// <summary>Never: nothing on record hangs on who an inclinometer is.</summary>
    public bool IsUnknown => false;

    /// <inheritdoc/>
    public void LinkOpened(Func<ProtocolCounters> counters)
    {
        lock (_gate)
            _heardNs = _clock.NowNs;
    }

    /// <inheritdoc/>
    public void LinkFailed(Diagnostic fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        Lose(fault.Code, fault.Message, fault.Remedy);
    }

    /// <inheritdoc/>
    public void Received(int bytes)
    {
        // Counted with the loads only.
    }

    /// <inheritdoc/>
    public void OnIdentity(PadIdentity identity)
    {
        // Zero and calibration hang on the cells, not on the inclinometer.
    }

    /// <inheritdoc/>
    public void OnSample(in RawSample sample)
    {
        if (sample.PitchDegrees is null || sample.RollDegrees is null)
        {
            Lose(PadCodes.TiltSensorFailed, "It reports a fault of its own.", "Check the inclinometer.");
            return;
        }

        lock (_gate)
            (_heardNs, _isKnown) = (_clock.NowNs, true);
        _pad.TakeTilt(sample.PitchDegrees, sample.RollDegrees);
        _pad.OnTroubleOver(PadCodes.TiltUnknown);
    }

    /// <inheritdoc/>
    public void OnRefusal(Code code, Sentence message, Sentence remedy) => Lose(code, message, remedy);

    /// <inheritdoc/>
    public void OnTrouble(Code code, Sentence message, Sentence remedy, bool stops)
    {
        if (stops)
            Lose(code, message, remedy);
    }

    /// <inheritdoc/>
    public void OnTroubleOver(Code code)
    {
        // The next sample says so.
    }

    /// <summary>An angle may not outlive its sensor; called often.</summary>
    internal void Tick(long nowNs)
    {
        bool isSilent;
        lock (_gate)
        {
            isSilent = _isKnown && nowNs - _heardNs > LongestAgeNs;
            _isKnown &= !isSilent;
        }

        if (isSilent)
            Lose(LinkCodes.PadSilent, "It sends nothing.", "Check its power and cable.");
    }

    private void Lose(Code code, Sentence message, Sentence remedy)
    {
        lock (_gate)
            _isKnown = false;
        _pad.TakeTilt(null, null);
        _pad.OnTrouble(PadCodes.TiltUnknown, $"The tilt is not known ({code}): {message}", $"{remedy} Loads go on without tilt correction.", stops: false);
    }
}
