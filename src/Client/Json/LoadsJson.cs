using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.Json;

/// <summary>A value, its standard uncertainty and U for 95 %, in the unit that the name around it says.</summary>
internal sealed record ValueJson(double Estimate, double? StandardUncertainty, double? ExpandedUncertainty, double? DegreesOfFreedom)
{
    public static ValueJson? Of(MeasuredValue? value) => value is null ? null : Of(value.AsValue);

    public static ValueJson Of(Value value) => new(value.Estimate, value.StandardUncertainty, value.Expanded, value.DegreesOfFreedom);
}

/// <summary>A correction that is in a load, kg, or the reason why it is refused.</summary>
internal sealed record CorrectionJson(string Name, double? SizeKg, string? Refused);

/// <summary>One corner.</summary>
internal sealed record CornerJson(ValueJson? LoadKg, bool Calibrated, string? Calibration, IReadOnlyList<CorrectionJson>? Corrections, IReadOnlyList<Diagnostic>? Faults);

/// <summary>What the crew aims for.</summary>
internal sealed record TargetJson(double CrossWeightPercent, double TolerancePercent);

/// <summary>The loads of one instant. Without verdict and aim when they are old.</summary>
internal sealed record ReadingJson
{
    public string? Verdict { get; init; }
    public string? Aim { get; init; }
    public ValueJson? CrossWeightPercent { get; init; }
    public ValueJson? TotalKg { get; init; }
    public ValueJson? FrontWeightPercent { get; init; }
    public ValueJson? LeftSideWeightPercent { get; init; }
    public ValueJson? FrontLeftRightDifferenceKg { get; init; }
    public ValueJson? RearLeftRightDifferenceKg { get; init; }
    public required IReadOnlyDictionary<string, CornerJson> Corners { get; init; }
    public TargetJson? Target { get; init; }
    public double? SettledInS { get; init; }
    public double? SettledToleranceKg { get; init; }
    public bool? WeighingReady { get; init; }
    public string? Remark { get; init; }

    public static ReadingJson Of(Loads loads, bool isLive) => new()
    {
        Verdict = isLive ? Words.Verdict(loads.Verdict) : null,
        Aim = isLive ? Words.Name(loads.Aim) : null,
        CrossWeightPercent = ValueJson.Of(loads.CrossWeightPercent),
        TotalKg = ValueJson.Of(loads.TotalKg),
        FrontWeightPercent = ValueJson.Of(loads.FrontWeightPercent),
        LeftSideWeightPercent = ValueJson.Of(loads.LeftSideWeightPercent),
        FrontLeftRightDifferenceKg = ValueJson.Of(loads.FrontLeftRightDifferenceKg),
        RearLeftRightDifferenceKg = ValueJson.Of(loads.RearLeftRightDifferenceKg),
        Corners = loads.Corners.ToDictionary(c => c.Corner.Name(), Corner),
        Target = loads.Target is { } target ? new TargetJson(target.CrossWeightPercent, target.TolerancePercent) : null,
        SettledInS = isLive && loads.HasSettledInS ? loads.SettledInS : null,
        SettledToleranceKg = loads.SettledToleranceKg,
        WeighingReady = isLive ? loads.WeighingReady : null,
        Remark = isLive ? PeerText.Clean(loads.Remark, 300) : null,
    };

    private static CorrectionJson Correction(Correction correction) => new(
        PeerText.Clean(correction.Name, 24), correction.HasSizeKg ? correction.SizeKg : null, correction.HasSizeKg ? null : PeerText.Clean(correction.Reason, 200));

    private static CornerJson Corner(CornerLoad corner) => new(
        ValueJson.Of(corner.LoadKg),
        corner.Calibrated,
        corner.Calibration.Length > 0 ? PeerText.Clean(corner.Calibration, 80) : null,
        corner.Corrections.Count > 0 ? [.. corner.Corrections.Select(Correction)] : null,
        corner.Faults.Count > 0 ? [.. corner.Faults.Select(DiagnosticReader.Read)] : null);
}

/// <summary>
/// One line of <c>watch --json</c>. An old reading stands under another name than a live one, so that a script cannot take
/// it for live by not looking.
/// </summary>
internal sealed record LoadsJson
{
    public required string State { get; init; }
    public double? AgeMs { get; init; }
    public string? Bay { get; init; }
    public string? Time { get; init; }
    public ulong? Seq { get; init; }
    public string? StartId { get; init; }
    public ReadingJson? Reading { get; init; }
    public ReadingJson? HeldReading { get; init; }
    public ulong? Dropped { get; init; }
    public Diagnostic? Trouble { get; init; }

    public static LoadsJson Of(Judged<Loads> view)
    {
        var (loads, isLive) = (view.Message, view.Freshness == Freshness.Live);
        return new LoadsJson
        {
            State = StateWord.Of(view.Freshness),
            AgeMs = view.Age is { } age ? Math.Round(age.TotalMilliseconds, 1) : null,
            Bay = loads is null ? null : PeerText.Clean(loads.Bay, 32),
            Time = loads?.Stamp.Time?.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ss.fffZ"),
            Seq = loads?.Stamp.Seq,
            StartId = loads is null ? null : PeerText.Clean(loads.Stamp.StartId, 64),
            Reading = loads is not null && isLive ? ReadingJson.Of(loads, true) : null,
            HeldReading = loads is not null && !isLive ? ReadingJson.Of(loads, false) : null,
            Dropped = loads?.Dropped,
            Trouble = view.Trouble,
        };
    }
}
