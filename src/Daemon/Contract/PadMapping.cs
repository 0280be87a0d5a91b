using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;
using Timestamp = Google.Protobuf.WellKnownTypes.Timestamp;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Contract;

/// <summary>Puts a pad into the words of the public API.</summary>
internal sealed class PadMapping(ApiMapping mapping)
{
    public Wire.Pad Pad(PadSnapshot pad)
    {
        var result = new Wire.Pad
        {
            Corner = pad.Corner.ToWire(),
            State = State(pad.State),
            Link = pad.Configuration.Link,
            SerialNumber = pad.Identity?.SerialNumber ?? "",
            Firmware = pad.Identity?.Firmware ?? "",
            LoadKg = pad.LoadKg is { } kg ? Wire.MeasuredValue.Of(new Value(kg, pad.LoadUncertaintyKg)) : null,
            Zero = pad.Zero is { } zero ? Zero(zero) : null,
            Calibrated = pad.Calibration?.IsCalibrated == true,
            Calibration = pad.Calibration?.Identity ?? "",
            LastCalibration = pad.LastCalibration is { } last ? new Wire.LastCalibration { SerialNumber = last.Pad, Time = Timestamp.FromDateTimeOffset(last.Time), Who = last.Who, CalibratedToKg = last.CalibratedToKg } : null,
            Counters = Counters(pad.Counters),
            FreezeWatch = FreezeWatch(pad.FreezeEvidence),
        };
        Fill(result, pad);
        result.Faults.AddRange(pad.Faults.Select(mapping.Told));
        return result;
    }

    public static Wire.ZeroRecord Zero(ZeroPoint zero)
    {
        var record = new Wire.ZeroRecord { Time = Timestamp.FromDateTimeOffset(zero.TakenAt), Who = zero.Who, Counts = zero.Counts };
        if (zero.ShiftKg is { } shift)
            record.ShiftKg = shift;
        if (zero.SinceCalibrationKg is { } since)
            record.SinceCalibrationKg = since;
        record.Because = zero.Because ?? "";
        return record;
    }

    public static Wire.PadDiagnosis Diagnosis(PadSnapshot pad, PadDiagnosis diagnosis)
    {
        var result = new Wire.PadDiagnosis
        {
            Corner = pad.Corner.ToWire(),
            SerialNumber = pad.Identity?.SerialNumber ?? "",
            Samples = (ulong)diagnosis.Samples,
            MissedSamples = (ulong)diagnosis.Missed,
            LongestGapMs = diagnosis.LongestGapMs,
            UnsoundSamples = (ulong)diagnosis.Unsound,
            Frozen = diagnosis.Frozen,
            FreezeWatch = FreezeWatch(pad.FreezeEvidence),
        };
        if (pad.Identity is { } identity)
            result.StatedRateHz = identity.RateHz;
        if (diagnosis.RateHz is { } rate)
            result.MeasuredRateHz = rate;
        if (diagnosis.NoiseKg is { } noise)
            result.NoiseKg = noise;
        if (diagnosis.DriftKg is { } drift)
            result.DriftKg = drift;
        result.Lines.AddRange(diagnosis.Lines.Select(l => new Wire.SpectralLine { Hz = l.Hz, AmplitudeKg = l.AmplitudeKg }));
        result.Allan.AddRange(diagnosis.Allan.Select(a => new Wire.AllanPoint { Seconds = a.Seconds, DeviationKg = a.DeviationKg }));
        return result;
    }

    private static void Fill(Wire.Pad result, PadSnapshot pad)
    {
        if (pad.Identity is { } identity)
        {
            result.Cells = (uint)identity.Cells;
            result.CapacityKg = identity.CapacityKg;
            result.StatedRateHz = identity.RateHz;
        }

        if (pad.MeasuredRateHz is { } rate)
            result.MeasuredRateHz = rate;
        if (pad.AgeNs is { } age)
            result.AgeMs = Nanoseconds.ToMilliseconds(age);
        if (pad.PitchDegrees is { } pitch)
            result.PitchDeg = pitch;
        if (pad.RollDegrees is { } roll)
            result.RollDeg = roll;
        if (pad.TemperatureCelsius is { } temperature)
            result.TemperatureC = temperature;
        if (pad.ClockDriftPpm is { } drift)
            result.ClockDriftPpm = drift;
        if (pad.TransportJitterMs is { } jitter)
            result.TransportJitterMs = jitter;
    }

    private static Wire.LinkCounters Counters(PadCounters counters) => new()
    {
        Bytes = (ulong)counters.Bytes,
        Frames = (ulong)counters.Frames,
        BadFrames = (ulong)counters.BadFrames,
        SkippedBytes = (ulong)counters.SkippedBytes,
        MissedSamples = (ulong)counters.MissedSamples,
        RepeatedSamples = (ulong)counters.RepeatedSamples,
        Opened = (ulong)counters.Opened,
    };

    private static Wire.FreezeWatch FreezeWatch(FreezeEvidence? evidence) => evidence switch
    {
        FreezeEvidence.None => Wire.FreezeWatch.None,
        FreezeEvidence.Noise => Wire.FreezeWatch.ByNoise,
        FreezeEvidence.Siblings => Wire.FreezeWatch.BySiblings,
        _ => Wire.FreezeWatch.Unspecified,
    };

    private static Wire.PadState State(PadState state) => state switch
    {
        PadState.Absent => Wire.PadState.Absent,
        PadState.Waiting => Wire.PadState.Waiting,
        PadState.Live => Wire.PadState.Live,
        PadState.Silent => Wire.PadState.Silent,
        PadState.Refused => Wire.PadState.Refused,
        _ => Wire.PadState.Unspecified,
    };
}
