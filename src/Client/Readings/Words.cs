using ScaleLink.Api.V1;
using ScaleLink.Measure;

namespace ScaleLink.Client.Readings;

/// <summary>The client's words for what the API says in numbers. Names of <c>--json</c> are part of the contract.</summary>
internal static class Words
{
    public static string Verdict(Verdict verdict) => verdict switch
    {
        Api.V1.Verdict.Incomplete => "incomplete",
        Api.V1.Verdict.Raised => "raised",
        Api.V1.Verdict.Moving => "moving",
        Api.V1.Verdict.Settling => "settling",
        Api.V1.Verdict.Settled => "settled",
        Api.V1.Verdict.Disturbed => "disturbed",
        _ => "unknown",
    };

    public static string State(PadState state) => state switch
    {
        PadState.Absent => "absent",
        PadState.Waiting => "waiting",
        PadState.Live => "live",
        PadState.Silent => "silent",
        PadState.Refused => "refused",
        _ => "unknown",
    };

    public static string? Name(Aim aim) => aim switch
    {
        Aim.Within => "within",
        Aim.High => "high",
        Aim.Low => "low",
        Aim.TooCloseToTell => "too_close_to_tell",
        _ => null,
    };

    /// <summary>An age as a person says it.</summary>
    public static string Age(TimeSpan age) => age.TotalSeconds switch
    {
        < 10 => $"{age.TotalSeconds:0.0} s",
        < 120 => $"{age.TotalSeconds:0} s",
        _ => $"{age.TotalMinutes:0} min",
    };
}
