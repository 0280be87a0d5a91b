using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.PadInterchange;

/// <summary>A pad interchange in lines for a terminal of 80 columns: what was weighed, what comes next, what came of it.</summary>
internal static class InterchangePage
{
    private static readonly string[] Corners = ["LF", "RF", "LR", "RR"];

    public static IEnumerable<string> Lines(InterchangeView view, Glyphs glyphs) =>
        [.. Head(view), .. view.Placements.Select(p => Placement(p, glyphs)), .. Result(view, glyphs), .. Next(view, glyphs)];

    public static IEnumerable<string> List(ListInterchangesResponse list)
    {
        if (list.PadInterchanges.Count == 0)
            yield return "No pad interchanges: the pads were never interchanged under a car.";
        foreach (var r in list.PadInterchanges)
            yield return $"{PeerText.Clean(r.InterchangeId, 10),6}  {r.BegunAt.LocalMinute()}  {State(r.State),-10} {r.Placements.Count} weighings, {PeerText.Clean(r.BegunBy, 20)}";
    }

    private static IEnumerable<string> Head(InterchangeView view)
    {
        if (view.State is InterchangeState.None or InterchangeState.Measuring)
            foreach (var caution in view.Cautions)
                yield return $"Caution: {PeerText.Clean(caution, 200)}";
        yield return view.State == InterchangeState.None
            ? "The pads are not being interchanged. Zero, lower and settle the car, then: scalelink calibrations pad-interchange record"
            : $"Pad interchange {PeerText.Clean(view.InterchangeId, 10)}, {State(view.State)}, begun {view.BegunAt.LocalMinute()} by {PeerText.Clean(view.BegunBy, 40)}";
        if (view.EndedAt is { } ended)
            yield return $"ended {ended.LocalMinute()} by {PeerText.Clean(view.EndedBy, 40)}{(view.Remark.Length > 0 ? $": {PeerText.Clean(view.Remark, 200)}" : "")}";
    }

    private static string Placement(Placement placement, Glyphs glyphs) =>
        $"{placement.Number,2}  " + string.Join("  ", placement.Pads.Zip(Corners, (pad, corner) => $"{corner} {PeerText.Clean(pad.SerialNumber, 12)} {glyphs.Kg(pad.LoadKg, "0.00")}")) + $" {glyphs.MassSign()}";

    private static IEnumerable<string> Next(InterchangeView view, Glyphs glyphs)
    {
        // What a new one waits for is no part of one that has ended.
        if (view.EndedAt is not null)
            yield break;
        if (view.State == InterchangeState.Review)
            yield return "All four are weighed. Next: scalelink calibrations pad-interchange finish, or throw-away N to weigh one again.";
        if (view.Next.Count == 4)
        {
            yield return $"Next: {string.Join(", ", view.Next.Zip(Corners, (pad, corner) => $"{PeerText.Clean(pad, 20)} to {corner}"))}.";
            yield return "  Lift the car, move the pads, plug each into the cable of its new corner, zero, lower, settle: record.";
        }

        if (view.WaitingFor is { } waiting)
            yield return $"Not yet: {glyphs.Tell(DiagnosticReader.Read(waiting))}";
        else if (view.Ready)
            yield return "Ready: scalelink calibrations pad-interchange record";
    }

    private static IEnumerable<string> Result(InterchangeView view, Glyphs glyphs)
    {
        if (view.Refused is { } refused)
            yield return $"No outcome. {glyphs.Tell(DiagnosticReader.Read(refused))}";
        if (view.Result is not { } result)
            yield break;
        yield return "Against the mean of the four pads:";
        foreach (var pad in result.Pads)
            yield return $"  {PeerText.Clean(pad.SerialNumber, 20),-20} reads {Math.Abs(100 * pad.Relative):0.000} % {(pad.Relative < 0 ? "low " : "high")} {glyphs.PlusMinus}{100 * pad.Expanded:0.000} (95 %){(pad.Departs ? "  departs: calibrate it with masses" : "  no departure seen")}";
        var loads = result.LoadsKg;
        yield return glyphs.Line($"With that taken out: LF {BareKg(loads.Lf):0.00}  RF {BareKg(loads.Rf):0.00}  LR {BareKg(loads.Lr):0.00}  RR {Kg(loads.Rr):0.00}, (RF + LR) / total {result.CrossWeightPercent:0.00} %");
        yield return glyphs.Line($"Warp from weighing to weighing {string.Join(", ", result.WarpKg.Select(w => glyphs.Kg(w, "+0.00;-0.00;0.00")))} {glyphs.MassSign()}; repeatability that remains {Kg(result.ResidualSdKg):0.000}");
        foreach (var blind in result.CannotSee)
            yield return $"Not seen: {PeerText.Clean(blind, 200)}";
    }

    private static string State(InterchangeState state) => state switch
    {
        InterchangeState.Measuring => "weighing",
        InterchangeState.Review => "all weighed",
        InterchangeState.Finished => "finished",
        InterchangeState.Abandoned => "abandoned",
        _ => "unknown",
    };
}
