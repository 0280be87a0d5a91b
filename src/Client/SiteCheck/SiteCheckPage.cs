using System.Globalization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.WorkSessions;

namespace ScaleLink.Client.SiteCheck;

/// <summary>A watch over empty pads as lines.</summary>
internal static class SiteCheckPage
{
    private const int Longest = 300;

    /// <summary>While it goes on.</summary>
    public static IEnumerable<string> Progress(SiteCheckProgress now, Glyphs glyphs)
    {
        yield return $"Watching the empty pads: {Clock(now.ElapsedS)} of {Clock(60 * now.Minutes)}. Keep off them.";
        if (now.SoFar is not { } soFar)
        {
            yield return "Too little seen yet to tell anything.";
            yield break;
        }

        yield return $"So far: {glyphs.Say(PeerText.Clean(soFar.Statement, Longest))}";
        foreach (var line in Figures(soFar, glyphs))
            yield return line;
    }

    /// <summary>When it has ended.</summary>
    public static IEnumerable<string> Outcome(SiteCheckRecord? last, Glyphs glyphs)
    {
        if (last is null)
        {
            yield return "The pads have not been watched yet. With the pads empty and zeroed: scalelink patch site-check";
            yield break;
        }

        yield return $"Watch of {last.StartedAt.LocalMinute()} by {PeerText.Clean(last.Who, 40)}, for a car of {glyphs.Kg(last.TotalKg, "0")} {glyphs.MassSign()}{(last.TotalIsGuessed ? " (a guess: give --total)" : "")}";
        if (last.Why is { } why)
            yield return PlanPage.FindingLine(why, glyphs);
        if (last.Report is not { } report)
            yield break;
        yield return glyphs.Say(PeerText.Clean(report.Statement, Longest));
        foreach (var line in Figures(report, glyphs))
            yield return line;
        foreach (var finding in report.Findings)
            yield return PlanPage.FindingLine(finding, glyphs);
        yield return "How the car itself settles comes on top. Zero again after the weighing: a zero that moved tells how far to believe it.";
    }

    private static IEnumerable<string> Figures(SiteCheckReport report, Glyphs glyphs)
    {
        foreach (var part in report.Parts)
            yield return glyphs.Say($"  {Name(part.Kind),-12} reading {Size(part.HasReadingPercent, part.ReadingPercent),-10} change {Size(part.HasChangePercent, part.ChangePercent),-10} {glyphs.Tell(part.Said, Longest)}");
        if (report.Parts is [var first, ..])
            yield return $"  First: {PeerText.Clean(first.Remedy, Longest)}";
        foreach (var pad in report.Pads)
            yield return $"  {pad.Corner.Name()} drifts {Shown.Kg(pad.DriftKgPer10Min, glyphs, isSigned: true).Full(glyphs)} in 10 min{(pad.HasTemperatureC ? $", {Number(pad.TemperatureC, "0.0")} °C ({Number(pad.WarmedK, "+0.0;-0.0;0.0")} K)" : "")}{(pad.HasTiltChangeDeg ? $", tilted by {Number(pad.TiltChangeDeg, "0.00")}°" : "")}";
    }

    private static string Size(bool known, double percent) => known ? $"± {Number(percent, "0.000")} %" : "not known";

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static string Clock(double seconds) => $"{Math.Floor(seconds / 60):0}:{Math.Floor(seconds % 60):00}";

    private static string Name(SiteCheckPartKind kind) => kind.ToString().ToLowerInvariant();
}
