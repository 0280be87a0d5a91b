using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>What to do with loads read here.</summary>
enum SiteCheckVerdict
{
    /// <summary>Fix the first part, then watch again: not even a change of the wanted size can be believed.</summary>
    [JsonStringEnumMemberName("Mend")]
    Remedy,
    /// <summary>Compare readings with each other; what a single one says of the car is not believed.</summary>
    Compare,
    /// <summary>Weigh: a cross weight read here can be believed to the wanted size.</summary>
    Weigh,
}

/// <summary>What a watch over empty pads says of the place.</summary>
/// <param name="Verdict">What to do.</param>
/// <param name="ReadingPercent">A cross weight read here is good to ± so much, percent, 95 %; null: cannot be told. How the car itself settles comes on top.</param>
/// <param name="ChangePercent">A change between two readings within this hour is good to ± so much, percent, 95 %; null: cannot be told.</param>
/// <param name="ZeroEveryMinutes">How old a zero may be at a reading for these figures to hold, minutes.</param>
/// <param name="WantedPercent">The size that the verdict is held against, percent.</param>
/// <param name="Seconds">Seen for so long.</param>
/// <param name="Parts">The largest first; what cannot be told before all others.</param>
/// <param name="Pads">LF, RF, LR, RR.</param>
/// <param name="Drift">In terms of the car.</param>
/// <param name="Findings">What the crew should know or do.</param>
sealed record SiteCheckReport(
    SiteCheckVerdict Verdict, double? ReadingPercent, double? ChangePercent, double ZeroEveryMinutes, double WantedPercent, double Seconds,
    IReadOnlyList<SiteCheckPart> Parts, IReadOnlyList<PadOutcome> Pads, DriftEffect Drift, IReadOnlyList<Diagnostic> Findings)
{
    /// <summary>All of it in one breath.</summary>
    public string Statement => SiteCheckWords.Of(this);
}
