using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Doctor;

/// <summary>Findings as lines: state by word first, each failure with its remedy below it.</summary>
internal static class FindingsTable
{
    private const int LongestSubject = 48;
    private const int LongestText = 400;

    public static IEnumerable<string> Lines(IReadOnlyList<CheckResult> findings, Glyphs glyphs)
    {
        var (check, subject) = (Width(findings, f => f.Check), Math.Min(LongestSubject, Width(findings, f => f.Subject)));
        foreach (var f in findings)
        {
            var code = f.Wrong is { } failed ? $" ({failed.Code})" : "";
            yield return $"{Word(f.Outcome),-8}  {f.Check.PadRight(check)}  {PeerText.Clean(f.Subject, LongestSubject).PadRight(subject)}  {glyphs.Tell(f.Message, LongestText)}{code}";
            if (f.Wrong is { Remedy.IsEmpty: false } wrong)
                yield return $"{new string(' ', 10)}{glyphs.Tell($"-> {wrong.Remedy}", LongestText)}";
        }

        yield return $"{Count(findings, Outcome.Pass)} pass, {Count(findings, Outcome.Fail)} fail, {Count(findings, Outcome.LeftOut)} left out.";
    }

    public static string Word(Outcome outcome) => outcome switch
    {
        Outcome.Pass => "pass",
        Outcome.Fail => "FAIL",
        _ => "left out",
    };

    private static int Width(IReadOnlyList<CheckResult> findings, Func<CheckResult, string> text) => findings.Select(f => text(f).Length).DefaultIfEmpty(0).Max();

    private static int Count(IReadOnlyList<CheckResult> findings, Outcome outcome) => findings.Count(f => f.Outcome == outcome);
}
