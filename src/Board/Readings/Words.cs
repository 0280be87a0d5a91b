using ScaleLink.Api.V1;
using ScaleLink.Board.Age;

namespace ScaleLink.Board.Readings;

/// <summary>The page's words for what the API says in numbers.</summary>
internal static class Words
{
    public static string Verdict(Verdict verdict) => verdict switch
    {
        Api.V1.Verdict.Incomplete => "incomplete",
        Api.V1.Verdict.Raised => "raised",
        Api.V1.Verdict.Moving => "moving",
        Api.V1.Verdict.Settling => "coming to rest",
        Api.V1.Verdict.Settled => "settled",
        Api.V1.Verdict.Disturbed => "disturbed",
        _ => "unknown",
    };

    /// <summary>The shape of a verdict on the target.</summary>
    public static string Sign(Aim aim) => aim switch
    {
        Aim.Within => "\u25a3",
        Aim.High => "\u25b2",
        Aim.Low => "\u25bc",
        Aim.TooCloseToTell => "\u25e7",
        _ => "",
    };

    /// <summary>How full the tank is; nothing for as weighed.</summary>
    public static string Fuel(FuelLevel level) => level switch
    {
        FuelLevel.Start => "start",
        FuelLevel.Finish => "finish",
        FuelLevel.Empty => "empty tank",
        _ => "",
    };

    /// <summary>With a capital in front.</summary>
    public static string Capital(string words) => words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>Whether the loads can go on record now, and what is missing.</summary>
    public static Sentence ReadyFor(Judged<Loads> loads) => loads.Live switch
    {
        { WeighingReady: true } => "The car is settled and fit for the record.",
        { Verdict: Api.V1.Verdict.Settled } => "Settled: hold still a moment longer.",
        // Some remarks say no more than the verdict.
        { } live when live.Remark.TrimEnd('.').Equals(Verdict(live.Verdict), StringComparison.OrdinalIgnoreCase) => $"Not yet: {Verdict(live.Verdict)}.",
        { } live => (Sentence)$"Not yet: {Verdict(live.Verdict)}. {live.RemarkSaid}",
        null => "Not now: no live reading.",
    };

    /// <summary>Why a step cannot be taken yet.</summary>
    public static Sentence NotYet(Api.V1.Diagnostic? waitingFor) => waitingFor is { } wait ? (Sentence)$"Not yet: {wait.Read().Whole}" : "Not yet.";

    public static string State(PadState state) => state switch
    {
        PadState.Absent => "absent",
        PadState.Waiting => "waiting",
        PadState.Live => "live",
        PadState.Silent => "silent",
        PadState.Refused => "refused",
        _ => "unknown",
    };

    /// <summary>Class of what has that freshness, for the style sheets.</summary>
    public static string Class(Freshness freshness) => $"is-{freshness.ToString().ToLowerInvariant()}";

    /// <summary>A span of time as a person says it.</summary>
    public static string Span(TimeSpan span) => span.TotalSeconds switch
    {
        < 10 => $"{span.TotalSeconds:0.0} s",
        < 120 => $"{span.TotalSeconds:0} s",
        < 7200 => $"{span.TotalMinutes:0} min",
        _ => $"{span.TotalHours:0} h",
    };

    /// <summary>Names one after the other: "LF, RF and LR".</summary>
    public static string List(IReadOnlyList<string> names) =>
        names.Count < 2 ? string.Concat(names) : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}";

    /// <summary>"50.0 ±0.2 %": what the crew aims for.</summary>
    public static string Target(Target target) => new TargetBand(target.CrossWeightPercent, target.TolerancePercent).PercentText;
}
