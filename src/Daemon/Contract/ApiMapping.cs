using Google.Protobuf.WellKnownTypes;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;

using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Contract;

/// <summary>Puts readings and pads into the words of the public API. What is absent here is absent there.</summary>
internal sealed class ApiMapping(BayConfiguration bay, TargetNow aimedFor, BayClock clock)
{
    public Wire.Stamp Stamp(long seq, long atNs, double maxAgeMs) => new()
    {
        Time = Timestamp.FromDateTimeOffset(clock.ToUtc(atNs)),
        Seq = (ulong)seq,
        MonotonicNs = atNs,
        AgeMs = Nanoseconds.ToMilliseconds(clock.NowNs - atNs),
        MaxAgeMs = maxAgeMs,
        StartId = clock.StartId,
    };

    public Wire.Loads Loads(BayReading reading, double maxAgeMs, long dropped)
    {
        var loads = new Wire.Loads
        {
            Stamp = Stamp(reading.Seq, reading.AtNs, maxAgeMs),
            Bay = bay.Bay,
            Verdict = Verdict(reading.Verdict),
            TotalKg = Wire.MeasuredValue.Of(reading.TotalKg),
            CrossWeightPercent = Wire.MeasuredValue.Of(reading.CrossWeightPercent),
            FrontWeightPercent = Wire.MeasuredValue.Of(reading.FrontWeightPercent),
            LeftSideWeightPercent = Wire.MeasuredValue.Of(reading.LeftSideWeightPercent),
            FrontLeftRightDifferenceKg = Wire.MeasuredValue.Of(reading.FrontLeftRightDifferenceKg),
            RearLeftRightDifferenceKg = Wire.MeasuredValue.Of(reading.RearLeftRightDifferenceKg),
            SettledToleranceKg = bay.Weigh.SettledToleranceKg,
            WeighingReady = reading.WeighingReady,
            Remark = reading.Remark,
            TypedRemark = Wire.Sentence.Of(reading.Remark),
            Dropped = (ulong)dropped,
        };
        if (reading.SettledInSeconds is { } seconds)
            loads.SettledInS = seconds;
        if (aimedFor.Band is { } target)
            loads.Target = new Wire.Target { CrossWeightPercent = target.Centre, TolerancePercent = target.Tolerance };
        loads.Corners.AddRange(reading.Corners.Select(Corner));
        return loads;
    }

    public Wire.Diagnostic Told(Diagnostic diagnostic)
    {
        var wire = diagnostic.ToWire();
        if (diagnostic.SinceNs is { } since)
            wire.Since = Timestamp.FromDateTimeOffset(clock.ToUtc(since));
        return wire;
    }

    private Wire.CornerLoad Corner(CornerReading corner)
    {
        var load = new Wire.CornerLoad
        {
            Corner = corner.Corner.ToWire(),
            LoadKg = Wire.MeasuredValue.Of(corner.LoadKg),
            Calibrated = corner.Calibrated,
            Calibration = corner.Calibration,
        };
        foreach (var (name, size, reason) in corner.Corrections)
        {
            var correction = new Wire.Correction { Name = name, Reason = reason, TypedReason = Wire.Sentence.Of(reason) };
            if (size is { } kg)
                correction.SizeKg = kg;
            load.Corrections.Add(correction);
        }

        load.Budget.AddRange(corner.Budget.Select(p => new Wire.UncertaintyPart { Name = p.Name, StandardUncertaintyKg = p.StandardUncertaintyKg }));
        load.Faults.AddRange(corner.Faults.Select(Told));
        return load;
    }

    private static Wire.Verdict Verdict(BayVerdict verdict) => verdict switch
    {
        BayVerdict.Incomplete => Wire.Verdict.Incomplete,
        BayVerdict.Raised => Wire.Verdict.Raised,
        BayVerdict.Moving => Wire.Verdict.Moving,
        BayVerdict.Settling => Wire.Verdict.Settling,
        BayVerdict.Settled => Wire.Verdict.Settled,
        BayVerdict.Disturbed => Wire.Verdict.Disturbed,
        _ => Wire.Verdict.Unspecified,
    };
}
