using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Protocol.Recordings;

namespace ScaleLink.Daemon.Recording;

/// <summary>Puts the faults of one pad onto the tape of the link that they are about, and tells of each new one.</summary>
internal sealed class FaultWatch
{
    private readonly PadChannel _pad;
    private readonly FlightRecorder _recorder;
    private readonly BayClock _clock;
    private readonly Action<RecordedLink, Diagnostic> _begun;
    private readonly Lock _gate = new();
    private readonly FaultChanges _changes = new();

    public FaultWatch(PadChannel pad, FlightRecorder recorder, BayClock clock, Action<RecordedLink, Diagnostic> begun)
    {
        (_pad, _recorder, _clock, _begun) = (pad, recorder, clock, begun);
        pad.Changed += Look;
    }

    public void End() => _pad.Changed -= Look;

    private void Look()
    {
        lock (_gate)
        {
            var (begun, over) = _changes.Take(_pad.Snapshot().Faults);
            foreach (var fault in begun)
                Begin(fault);
            foreach (var fault in over)
                LinkOf(fault)?.Tape.Write(RecordingEventKind.FaultOver, $"{fault.Code} {_pad.Corner}", _clock.NowNs);
        }
    }

    private void Begin(Diagnostic fault)
    {
        if (LinkOf(fault) is not { } link)
            return;
        link.Tape.Write(RecordingEventKind.Fault, $"{fault.Code} {_pad.Corner}: {fault.Message}", _clock.NowNs);
        _begun(link, fault);
    }

    // A missing zero or calibration is nothing that the line could show.
    private RecordedLink? LinkOf(Diagnostic fault)
    {
        if (!LinkCodes.Area.Holds(fault.Code) && !PadCodes.Area.Holds(fault.Code))
            return null;
        var isTilt = fault.Code == PadCodes.TiltUnknown;
        return _recorder.Links.FirstOrDefault(l => l.Sources.Any(s => s.Pad == _pad && s.IsTilt == isTilt));
    }
}
