using ScaleLink.Api.V1;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Readings;
using ScaleLink.Board.WorkSessions;

namespace ScaleLink.Board.Watch;

/// <summary>What the crew should do now, in words.</summary>
/// <param name="Do">The action.</param>
/// <param name="Why">Reason or detail; may be empty.</param>
/// <param name="Caution">What can hurt someone here; may be empty.</param>
public sealed record NextStep(Sentence Do, Sentence Why = default, string Caution = "")
{
    private const string RaisedCaution = "On stands, wheels chocked. Nobody under a car that hangs on a jack.";
    private const string BounceCaution = "Hands clear while the car is bounced.";
    private const string Settle = "then settle the car: roll it or bounce it, brakes off";

    /// <summary>For the bay as judged now.</summary>
    public static NextStep For(BayView view, Unit unit)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (view.Loads is { Freshness: Freshness.Held })
            return new NextStep($"Do not use these numbers: {(view.Trouble is null ? "they come too late" : "no new ones come")}.", view.Trouble?.Whole ?? default);
        // What is left to turn is told through everything that turning does to the car; a pad that is missing goes before it.
        if (view is { Loads.Live: { } now, WorkSessions.Live.Session: { } session } && session.State.IsOpen()
            && (now.Verdict == Verdict.Settled || (now.Verdict != Verdict.Incomplete && session.Left().Count > 0)))
            return new NextStep(session.Next, $"{session.Car}: {SessionWords.State(session)}", session.CautionLine);
        return view.Loads.Live is { } loads ? ForLive(loads, unit) : new NextStep((view.Trouble ?? DaemonDiagnostics.NotYet).Message, view.Trouble?.Remedy ?? default);
    }

    private static NextStep ForLive(Loads loads, Unit unit) => loads.Verdict switch
    {
        Verdict.Incomplete when FaultGroup.Of(loads) is [var first, ..] => new NextStep(first.Fault.Remedy, $"{first.Corners}: {first.Fault.Message} ({first.Fault.Code})"),
        Verdict.Incomplete => new NextStep("Wait: not all four loads are known.", loads.RemarkSaid),
        Verdict.Raised => new NextStep("Put the car on all four pads.", loads.RemarkSaid, RaisedCaution),
        Verdict.Moving => new NextStep("Wait until the car is still.", loads.RemarkSaid),
        Verdict.Settling => new NextStep(loads.HasSettledInS ? $"Wait about {Math.Ceiling(loads.SettledInS):0} s." : "Wait until the car is still.", loads.RemarkSaid),
        Verdict.Disturbed => new NextStep("Hands off, or settle the car again.", loads.RemarkSaid, BounceCaution),
        Verdict.Settled => ForAim(loads, unit),
        _ => new NextStep("Wait.", loads.RemarkSaid),
    };

    private static NextStep ForAim(Loads loads, Unit unit) => loads.Aim switch
    {
        Aim.Within => new NextStep("On target: leave the perches alone."),
        Aim.TooCloseToTell => new NextStep("Too close to the edge of the tolerance to tell.", "Settle the car again and compare, or go on towards the target.", BounceCaution),
        Aim.High => new NextStep("Lower RF or LR, or raise LF or RR.", $"{ToMove(loads, unit)} from RF + LR to LF + RR, {Settle}.", BounceCaution),
        Aim.Low => new NextStep("Raise RF or LR, or lower LF or RR.", $"{ToMove(loads, unit)} from LF + RR to RF + LR, {Settle}.", BounceCaution),
        _ => new NextStep("Settled: the reading holds.", loads.Target is null ? "The bay file sets no target." : loads.RemarkSaid),
    };

    // Cross weight is a share of the total: what one diagonal loses the other gains.
    private static string ToMove(Loads loads, Unit unit) => loads.OffTarget is { } off
        ? $"{ValueText.Live(off.Size.Times(loads.TotalKg.Estimate / 100), unit).Estimate} {unit.Sign} have to go"
        : "";
}
