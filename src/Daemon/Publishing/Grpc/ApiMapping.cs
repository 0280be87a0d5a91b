using Google.Protobuf.WellKnownTypes;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Pipeline;
using Api = ScaleLink.Api.V1;
using Corner = ScaleLink.Weighing.Corner;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Puts readings and pads into the words of the public API. What is absent here is absent there.</summary>
internal sealed class ApiMapping(BayConfiguration bay, BayClock clock)
{
    public Api.Stamp Stamp(long seq, long atNs, double maxAgeMs) => new()
    {
        Time = Timestamp.FromDateTimeOffset(clock.ToUtc(atNs)),
        Seq = (ulong)seq,
        MonotonicNs = atNs,
        AgeMs = Nanoseconds.ToMilliseconds(clock.NowNs - atNs),
        MaxAgeMs = maxAgeMs,
        RunId = clock.RunId,
    };

    public Api.Loads Loads(BayReading reading, double maxAgeMs, long dropped)
    {
        var loads = new Api.Loads
        {
            Stamp = Stamp(reading.Seq, reading.AtNs, maxAgeMs),
            Bay = bay.Bay,
            Verdict = Verdict(reading.Verdict),
            TotalKg = Quantity(reading.TotalKg),
            CrossWeightPercent = Quantity(reading.CrossWeightPercent),
            FrontSharePercent = Quantity(reading.FrontSharePercent),
            LeftSharePercent = Quantity(reading.LeftSharePercent),
            FrontSideDifferenceKg = Quantity(reading.FrontSideDifferenceKg),
            RearSideDifferenceKg = Quantity(reading.RearSideDifferenceKg),
            SettledToleranceKg = bay.Weigh.SettledToleranceKg,
            CaptureReady = reading.CaptureReady,
            Remark = reading.Remark,
            Dropped = (ulong)dropped,
        };
        if (reading.SettledInSeconds is { } seconds)
            loads.SettledInS = seconds;
        if (bay.Target is { } target)
            loads.Target = new Api.Target { CrossWeightPercent = target.CrossWeightPercent, TolerancePercent = target.TolerancePercent };
        loads.Corners.AddRange(reading.Corners.Select(Corner));
        return loads;
    }

    public static Api.Corner Corner(Corner corner) => corner switch
    {
        Weighing.Corner.LF => Api.Corner.Lf,
        Weighing.Corner.RF => Api.Corner.Rf,
        Weighing.Corner.LR => Api.Corner.Lr,
        Weighing.Corner.RR => Api.Corner.Rr,
        _ => Api.Corner.Unspecified,
    };

    public Api.Fault Fault(Fault fault) => new()
    {
        Code = fault.Code,
        Message = fault.Message,
        Mend = fault.Mend,
        Since = Timestamp.FromDateTimeOffset(clock.ToUtc(fault.SinceNs)),
    };

    private Api.CornerLoad Corner(CornerReading corner)
    {
        var load = new Api.CornerLoad
        {
            Corner = Corner(corner.Corner),
            LoadKg = Quantity(corner.LoadKg),
            Proved = corner.Proved,
            Calibration = corner.Calibration,
        };
        foreach (var (name, size, reason) in corner.Corrections)
        {
            var correction = new Api.Correction { Name = name, Reason = reason };
            if (size is { } kg)
                correction.SizeKg = kg;
            load.Corrections.Add(correction);
        }

        load.Budget.AddRange(corner.Budget.Select(p => new Api.UncertaintyPart { Name = p.Name, StandardUncertaintyKg = p.StandardUncertaintyKg }));
        load.Faults.AddRange(corner.Faults.Select(Fault));
        return load;
    }

    public static Api.Quantity? Quantity(Quantity? quantity)
    {
        if (quantity is not { } q)
            return null;
        var result = new Api.Quantity { Value = q.Value };
        if (q.StandardUncertainty is { } u)
            result.StandardUncertainty = u;
        if (q.DegreesOfFreedom is { } dof)
            result.DegreesOfFreedom = dof;
        return result;
    }

    private static Api.Verdict Verdict(BayVerdict verdict) => verdict switch
    {
        BayVerdict.Incomplete => Api.Verdict.Incomplete,
        BayVerdict.Raised => Api.Verdict.Raised,
        BayVerdict.Moving => Api.Verdict.Moving,
        BayVerdict.Settling => Api.Verdict.Settling,
        BayVerdict.Settled => Api.Verdict.Settled,
        BayVerdict.Disturbed => Api.Verdict.Disturbed,
        _ => Api.Verdict.Unspecified,
    };
}
