using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Readings;

/// <summary>One view of the loads as one line of text, for logs and terminals that cannot redraw.</summary>
internal sealed class PlainLine(Glyphs glyphs)
{
    private const int LongestRemark = 160;

    public string Of(Judged<Loads> view) => view switch
    {
        { Freshness: Freshness.Live, Message: { } loads } => Of(loads),
        { Freshness: Freshness.Held, Message: { } loads } => $"HELD {(view.Age is { } age ? Words.Age(age) + " old" : "age not known")}: {Numbers(loads)} {Why(view)}".TrimEnd(),
        _ => $"ABSENT {Why(view)}".TrimEnd(),
    };

    /// <summary>A reading that is known to be live.</summary>
    public string Of(Loads loads)
    {
        var remark = glyphs.Tell(loads.RemarkSaid, LongestRemark);
        if (loads.Verdict is Verdict.Raised or Verdict.Incomplete)
            return $"{Words.Verdict(loads.Verdict)}: {remark}";
        var aim = AimWords.Of(loads.Aim, loads, glyphs);
        return $"{Words.Verdict(loads.Verdict)}: {Numbers(loads)}{(aim.Length > 0 ? $"; {aim}" : "")}";
    }

    private string Numbers(Loads loads)
    {
        var cross = loads.CrossWeightPercent is { } c ? $"cross weight {Shown.Percent(c).Full(glyphs)}" : "cross weight not known";
        var corners = loads.Corners.Where(c => c.LoadKg is not null).Select(c => $"{c.Corner.Name()} {Shown.LiveKg(c.LoadKg, glyphs).Bare(glyphs)}");
        var total = loads.TotalKg is { } t ? $", total {Shown.LiveKg(t, glyphs).Full(glyphs)}" : "";
        var nominalOnly = loads.Corners.Any(c => c.LoadKg is not null && !c.Calibrated) ? ", nominal only" : "";
        var patch = PatchWords.Of(loads, glyphs);
        return $"{cross}, {string.Join(" ", corners)} {glyphs.MassSign()}{total}{nominalOnly}{(patch.Length > 0 ? $", {patch}" : "")}";
    }

    private string Why(Judged<Loads> view) =>
        view.Trouble is { } trouble ? glyphs.Tell(trouble) : view.Freshness == Freshness.Absent ? "waiting for the daemon's first reading" : "";
}
