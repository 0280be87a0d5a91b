using System.Text.Json.Serialization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary>The present step.</summary>
internal sealed record ProcedureStepJson(
    uint Number, uint Of, string Part, string Words, IReadOnlyList<string> Masses, IReadOnlyList<string>? Ballast, double LoadKg, double? ChangeKg, string? Spot, bool Untold)
{
    public static ProcedureStepJson? From(ProcedureStep? step) => step is null ? null : new ProcedureStepJson(
        step.Number, step.Of, ProcedureWords.Part(step.Stage, step.Repetition, step.WayDown), ProcedureWords.Order(step), [.. step.Load.Masses],
        step.Load.Ballast.Count > 0 ? [.. step.Load.Ballast] : null, step.LoadKg, step.HasChangeKg ? step.ChangeKg : null,
        step.Spot.Length > 0 ? PeerText.Clean(step.Spot, 40) : null, step.Untold);
}

/// <summary>What the plan costs and brings.</summary>
internal sealed record ForecastJson(uint Steps, double HighestKg, uint Lifts, double LiftedKg, IReadOnlyList<ForeseenJson> Foreseen)
{
    public static ForecastJson? Of(PlanForecast? f) =>
        f is null ? null : new ForecastJson(f.Steps, f.HighestKg, f.Lifts, f.LiftedKg, [.. f.Foreseen.Select(at => new ForeseenJson(at.LoadKg, at.ExpandedKg))]);
}

/// <summary>Uncertainty that will come out at a load.</summary>
internal sealed record ForeseenJson(double LoadKg, double ExpandedKg);

/// <summary>A point that was read.</summary>
internal sealed record ProcedurePointJson(
    uint Number, string Part, uint Run, bool WayDown, string Load, string? Spot, double? LoadKg, double Counts, double? ReadKg, double? ResidualKg)
{
    public static ProcedurePointJson Of(ProcedurePoint point) => new(
        point.Number, ProcedureWords.Part(point.Stage, point.Repetition, point.WayDown), point.Repetition, point.WayDown, StackText.Of(point.Load),
        point.Spot.Length > 0 ? PeerText.Clean(point.Spot, 40) : null, point.HasLoadKg ? point.LoadKg : null, point.Counts,
        point.HasReadKg ? point.ReadKg : null, point.HasResidualKg ? point.ResidualKg : null);
}

/// <summary>A calibration.</summary>
internal sealed record CalibrationJson
{
    public required string Id { get; init; }
    public required string SerialNumber { get; init; }
    public required bool Calibrated { get; init; }
    public bool? InEffect { get; init; }
    public string? Time { get; init; }
    public string? Who { get; init; }
    public string? AdoptedAt { get; init; }
    public bool? Readopted { get; init; }
    public string? Note { get; init; }
    public string? ProcedureId { get; init; }
    public double? CalibratedToKg { get; init; }
    public required double SpanKgPerCount { get; init; }
    public required double CurvatureKgPerCount2 { get; init; }
    public required double ExpandedAtKg { get; init; }
    public required double ExpandedUncertaintyKg { get; init; }
    public required IReadOnlyList<double> CellTrim { get; init; }

    public static CalibrationJson? Of(CalibrationSummary? c) => c is null ? null : new CalibrationJson
    {
        Id = PeerText.Clean(c.Id, 64),
        SerialNumber = PeerText.Clean(c.SerialNumber, 40),
        Calibrated = c.Standing == CalibrationStanding.Calibrated,
        InEffect = c.InEffect,
        Time = c.Time?.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ssZ"),
        Who = Text(c.Who),
        AdoptedAt = c.AdoptedAt?.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ssZ"),
        Readopted = c.Readopted ? true : null,
        Note = Text(c.Note),
        ProcedureId = Text(c.ProcedureId),
        CalibratedToKg = c.HasCalibratedToKg ? c.CalibratedToKg : null,
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

/// <summary>What a calibration procedure came to.</summary>
internal sealed record ProcedureResultJson(
    IReadOnlyList<Diagnostic>? Refusals, CalibrationJson? Calibration, uint CurveOrder, IReadOnlyList<BeforeAfterJson> BeforeAfter, IReadOnlyList<ShiftJson>? Shifts,
    string? Conclusion, string? AccuracyClass, IReadOnlyList<string>? NotCovered, IReadOnlyList<string>? TakenAsUsual, double? PlacesDifferBeforeKg, double? PlacesDifferAfterKg)
{
    public static ProcedureResultJson? Of(ProcedureResult? r) => r is null ? null : new ProcedureResultJson(
        r.Refusals.Count > 0 ? [.. r.Refusals.Select(DiagnosticReader.Read)] : null, CalibrationJson.Of(r.Calibration), r.CurveOrder,
        [.. r.BeforeAfter.Select(b => new BeforeAfterJson(b.BeforeKg, b.NowKg, b.NowExpandedKg))],
        r.Shifts.Count > 0 ? [.. r.Shifts.Select(s => new ShiftJson(PeerText.Clean(s.What, 20), s.Kg, s.ExpandedKg))] : null,
        r.Conclusion.Length > 0 ? PeerText.Clean(r.Conclusion, 300) : null, r.AccuracyClass.Length > 0 ? PeerText.Clean(r.AccuracyClass, 300) : null, r.NotCovered.Count > 0 ? [.. r.NotCovered.Select(n => PeerText.Clean(n, 40))] : null,
        r.TakenAsUsual.Count > 0 ? [.. r.TakenAsUsual.Select(n => PeerText.Clean(n, 40))] : null,
        r.Trim?.BeforeKg, r.Trim?.AfterKg);
}

/// <summary>One line of <c>calibrate --json</c>.</summary>
internal sealed record ProcedureEventJson
{
    public required string Event { get; init; }
    public string? ProcedureId { get; init; }
    public string? State { get; init; }
    public string? Says { get; init; }
    public ProcedureStepJson? Step { get; init; }
    public ProcedurePointJson? Point { get; init; }
    public ProcedureResultJson? Result { get; init; }
    public ForecastJson? Plan { get; init; }
    public string? CalibrationId { get; init; }
    public Diagnostic? Trouble { get; init; }

    public static ProcedureEventJson Of(string what, ProcedureView? procedure) => new()
    {
        Event = what,
        ProcedureId = procedure is null ? null : PeerText.Clean(procedure.ProcedureId, 20),
        State = procedure is null ? null : ProcedureWords.State(procedure.State),
        Step = what is "step" or "waiting" ? ProcedureStepJson.From(procedure?.Step) : null,
        Plan = what == "plan" ? ForecastJson.Of(procedure?.Forecast) : null,
        Result = what == "result" ? ProcedureResultJson.Of(procedure?.Result) : null,
        CalibrationId = procedure?.Ending is { CalibrationId.Length: > 0 } ending ? PeerText.Clean(ending.CalibrationId, 64) : null,
    };
}

/// <summary>What <c>calibrations --json</c> lists.</summary>
internal sealed record CalibrationsJson(IReadOnlyList<CalibrationJson> Calibrations);

/// <summary>What <c>calibrations compare --json</c> prints.</summary>
internal sealed record ComparisonJson(CalibrationJson Before, CalibrationJson Now, IReadOnlyList<ShiftJson> Shifts, IReadOnlyList<BeforeAfterJson> Loads);

/// <summary>Names in snake case, as in all that is printed as JSON; what is not known is left out.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(ProcedureEventJson))]
[JsonSerializable(typeof(CalibrationsJson))]
[JsonSerializable(typeof(ComparisonJson))]
[JsonSerializable(typeof(CalibrationJson))]
internal sealed partial class ProcedureTexts : JsonSerializerContext;
