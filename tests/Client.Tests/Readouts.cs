using Google.Protobuf.WellKnownTypes;
using ScaleLink.Api.V1;
using ScaleLink.Client.Age;

namespace Client.Tests;

/// <summary>Messages as a daemon sends them, made up.</summary>
internal static class Readouts
{
    public const string Run = "run-a";

    public static MeasuredValue Measured(double estimate, double? expanded)
    {
        var value = new MeasuredValue { Estimate = estimate };
        if (expanded is { } u)
            value.StandardUncertainty = u / 1.959964;
        return value;
    }

    /// <summary>A car that has come to rest, cross weight as wished; U of every load 0.3 kg.</summary>
    public static Loads Settled(double cross = 52.14, double expanded = 0.03) => new()
    {
        Stamp = Stamp(),
        Bay = "unit6",
        Verdict = Verdict.Settled,
        Corners = { Loaded(Corner.Lf, 272.4, 0.3), Loaded(Corner.Rf, 280.1, 0.3), Loaded(Corner.Lr, 266.1, 0.3), Loaded(Corner.Rr, 229.0, 0.3) },
        TotalKg = Measured(1047.6, 0.6),
        CrossWeightPercent = Measured(cross, expanded),
        FrontWeightPercent = Measured(52.74, 0.03),
        LeftSideWeightPercent = Measured(51.40, 0.03),
        FrontLeftRightDifferenceKg = Measured(-7.7, 0.4),
        RearLeftRightDifferenceKg = Measured(37.1, 0.4),
        Target = new Target { CrossWeightPercent = 50, TolerancePercent = 0.2 },
        SettledToleranceKg = 0.1,
        Remark = "Settled.",
        WeighingReady = true,
    };

    /// <summary>The same car while it rocks: values without a claim.</summary>
    public static Loads Moving()
    {
        var loads = Settled();
        loads.Verdict = Verdict.Moving;
        loads.WeighingReady = false;
        loads.Remark = "The car moves.";
        foreach (var quantity in loads.Corners.Select(c => c.LoadKg).Concat([loads.TotalKg, loads.CrossWeightPercent, loads.FrontWeightPercent, loads.LeftSideWeightPercent, loads.FrontLeftRightDifferenceKg, loads.RearLeftRightDifferenceKg]))
            quantity.ClearStandardUncertainty();
        return loads;
    }

    /// <summary>No loads: the car is up, or a pad is missing.</summary>
    public static Loads Without(Verdict verdict, string remark)
    {
        var loads = new Loads { Stamp = Stamp(), Bay = "unit6", Verdict = verdict, Target = Settled().Target, SettledToleranceKg = 0.1, Remark = remark };
        loads.Corners.AddRange(Settled().Corners.Select(c => new CornerLoad { Corner = c.Corner, Calibration = "starting" }));
        return loads;
    }

    public static ListPadsResponse Pads()
    {
        var list = new ListPadsResponse { Bay = "unit6", Stamp = Stamp() };
        foreach (var (corner, number) in new[] { (Corner.Lf, 1001), (Corner.Rf, 1002), (Corner.Lr, 1003), (Corner.Rr, 1004) })
            list.Pads.Add(new Pad { Corner = corner, State = PadState.Live, SerialNumber = $"SLP-{number}", MeasuredRateHz = 320, AgeMs = 6, LoadKg = Measured(270, 0.02), PitchDeg = 0.12, RollDeg = -0.31 });
        return list;
    }

    public static Stamp Stamp(long monotonicNs = 1_000_000_000, string run = Run) => new()
    {
        Time = Timestamp.FromDateTimeOffset(new DateTimeOffset(2026, 3, 14, 9, 26, 53, TimeSpan.Zero)),
        Seq = 4711,
        MonotonicNs = monotonicNs,
        AgeMs = 5,
        MaxAgeMs = 750,
        StartId = run,
    };

    public static Judged<T> Live<T>(T message) where T : class => new() { Freshness = Freshness.Live, Message = message, Age = TimeSpan.FromMilliseconds(40), IsNew = true };

    public static Judged<T> Held<T>(T message, double seconds, Diagnostic? trouble = null) where T : class =>
        new() { Freshness = Freshness.Held, Message = message, Age = TimeSpan.FromSeconds(seconds), Trouble = trouble };

    public static Judged<T> Absent<T>(Diagnostic? trouble = null) where T : class => new() { Freshness = Freshness.Absent, Trouble = trouble };

    private static CornerLoad Loaded(Corner corner, double kg, double expanded) => new() { Corner = corner, LoadKg = Measured(kg, expanded), Calibration = "starting" };
}
