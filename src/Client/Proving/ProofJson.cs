using System.Text.Json.Serialization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Proving;

/// <summary>The present step.</summary>
internal sealed record ProofStepJson(
    uint Number, uint Of, string Part, string Words, IReadOnlyList<string> Masses, IReadOnlyList<string>? Ballast, double LoadKg, double? ChangeKg, string? Spot, bool Untold)
{
    public static ProofStepJson? From(ProofStep? step) => step is null ? null : new ProofStepJson(
        step.Number, step.Of, ProofWords.Part(step.Stage, step.Run, step.WayDown), ProofWords.Order(step), [.. step.Load.Masses],
        step.Load.Ballast.Count > 0 ? [.. step.Load.Ballast] : null, step.LoadKg, step.HasChangeKg ? step.ChangeKg : null,
        step.Spot.Length > 0 ? PeerText.Clean(step.Spot, 40) : null, step.Untold);
}

/// <summary>A point that was read.</summary>
internal sealed record ProofPointJson(
    uint Number, string Part, uint Run, bool WayDown, string Load, string? Spot, double? LoadKg, double Counts, double? ReadKg, double? ResidualKg)
{
    public static ProofPointJson Of(ProofPoint point) => new(
        point.Number, ProofWords.Part(point.Stage, point.Run, point.WayDown), point.Run, point.WayDown, StackText.Of(point.Load),
        point.Spot.Length > 0 ? PeerText.Clean(point.Spot, 40) : null, point.HasLoadKg ? point.LoadKg : null, point.Counts,
        point.HasReadKg ? point.ReadKg : null, point.HasResidualKg ? point.ResidualKg : null);
}

/// <summary>A calibration.</summary>
internal sealed record CalibrationJson
{
    public required string Id { get; init; }
    public required string SerialNumber { get; init; }
    public required bool Proved { get; init; }
    public bool? InForce { get; init; }
    public string? Time { get; init; }
    public string? Who { get; init; }
    public string? AdoptedAt { get; init; }
    public bool? Readopted { get; init; }
    public string? Note { get; init; }
    public string? ProofId { get; init; }
    public double? ProvedToKg { get; init; }
    public required double SpanKgPerCount { get; init; }
    public required double CurvatureKgPerCount2 { get; init; }
    public required double ExpandedAtKg { get; init; }
    public required double ExpandedUncertaintyKg { get; init; }
    public required IReadOnlyList<double> CellTrim { get; init; }

    public static CalibrationJson? Of(CalibrationSummary? c) => c is null ? null : new CalibrationJson
    {
        Id = PeerText.Clean(c.Id, 64),
        SerialNumber = PeerText.Clean(c.SerialNumber, 40),
        Proved = c.Standing == CalibrationStanding.Proved,
        InForce = c.InForce,
        Time = c.Time?.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ssZ"),
        Who = Text(c.Who),
        AdoptedAt = c.AdoptedAt?.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ssZ"),
        Readopted = c.Readopted ? true : null,
        Note = Text(c.Note),
        ProofId = Text(c.ProofId),
        ProvedToKg = c.HasProvedToKg ? c.ProvedToKg : null,
        SpanKgPerCount = c.SpanKgPerCount,
        CurvatureKgPerCount2 = c.CurvatureKgPerCount2,
        ExpandedAtKg = c.ExpandedAtKg,
        ExpandedUncertaintyKg = c.ExpandedUncertaintyKg,
        CellTrim = [.. c.CellTrim],
    };

    private static string? Text(string text) => text.Length > 0 ? PeerText.Clean(text, 500) : null;
}

/// <summary>Old and new at one load.</summary>
internal sealed record BeforeAfterJson(double BeforeKg, double NowKg, double NowExpandedKg);

/// <summary>What moved.</summary>
internal sealed record ShiftJson(string What, double Kg, double ExpandedKg);

/// <summary>What a proof came to.</summary>
internal sealed record ProofResultJson(
    IReadOnlyList<Diagnostic>? Refusals, CalibrationJson? Calibration, uint CurveOrder, IReadOnlyList<BeforeAfterJson> BeforeAfter, IReadOnlyList<ShiftJson>? Shifts,
    string? Yardstick, IReadOnlyList<string>? NotCovered, double? PlacesDifferBeforeKg, double? PlacesDifferAfterKg)
{
    public static ProofResultJson? Of(ProofResult? r) => r is null ? null : new ProofResultJson(
        r.Refusals.Count > 0 ? [.. r.Refusals.Select(DiagnosticReader.Read)] : null, CalibrationJson.Of(r.Calibration), r.CurveOrder,
        [.. r.BeforeAfter.Select(b => new BeforeAfterJson(b.BeforeKg, b.NowKg, b.NowExpandedKg))],
        r.Shifts.Count > 0 ? [.. r.Shifts.Select(s => new ShiftJson(PeerText.Clean(s.What, 20), s.Kg, s.ExpandedKg))] : null,
        r.Yardstick.Length > 0 ? PeerText.Clean(r.Yardstick, 300) : null, r.NotCovered.Count > 0 ? [.. r.NotCovered.Select(n => PeerText.Clean(n, 40))] : null,
        r.Trim?.BeforeKg, r.Trim?.AfterKg);
}

/// <summary>One line of <c>calibrate --json</c>.</summary>
internal sealed record ProofEventJson
{
    public required string Event { get; init; }
    public string? ProofId { get; init; }
    public string? State { get; init; }
    public string? Says { get; init; }
    public ProofStepJson? Step { get; init; }
    public ProofPointJson? Point { get; init; }
    public ProofResultJson? Result { get; init; }
    public string? CalibrationId { get; init; }
    public Diagnostic? Trouble { get; init; }

    public static ProofEventJson Of(string what, ProofView? proof) => new()
    {
        Event = what,
        ProofId = proof is null ? null : PeerText.Clean(proof.ProofId, 20),
        State = proof is null ? null : ProofWords.State(proof.State),
        Step = what is "step" or "waiting" ? ProofStepJson.From(proof?.Step) : null,
        Result = what == "result" ? ProofResultJson.Of(proof?.Result) : null,
        CalibrationId = proof?.Ending is { CalibrationId.Length: > 0 } ending ? PeerText.Clean(ending.CalibrationId, 64) : null,
    };
}

/// <summary>What <c>proofs --json</c> lists.</summary>
internal sealed record CalibrationsJson(IReadOnlyList<CalibrationJson> Calibrations);

/// <summary>What <c>proofs compare --json</c> prints.</summary>
internal sealed record ComparisonJson(CalibrationJson Before, CalibrationJson Now, IReadOnlyList<ShiftJson> Shifts, IReadOnlyList<BeforeAfterJson> Loads);

/// <summary>Names in snake case, as in all that is printed as JSON; what is not known is left out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(ProofEventJson))]
[JsonSerializable(typeof(CalibrationsJson))]
[JsonSerializable(typeof(ComparisonJson))]
[JsonSerializable(typeof(CalibrationJson))]
internal sealed partial class ProofTexts : JsonSerializerContext;
