using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.WorkSessions.Guided;

/// <summary>What can be done in a session as it stands: Enter is always the next step, or nothing is.</summary>
internal static class Offers
{
    private const int MostCauses = 3;

    /// <summary>In the order in which they are shown.</summary>
    /// <param name="session">The session in the bay; absent when none is open.</param>
    /// <param name="isWaiting">A weighing was asked for and waits for the car to settle.</param>
    /// <param name="units">Of the terminal.</param>
    public static IReadOnlyList<Offer> For(Session? session, bool isWaiting, Units units)
    {
        if (session is null || session.State is SessionState.Finished or SessionState.Abandoned or SessionState.Unspecified)
            return [new(Offer.Enter, "starts a session with the car in the bay", Act.Start), Leave];
        IEnumerable<Offer> now = session switch
        {
            { State: SessionState.Preparing } => Checks(session.Preparation, units),
            { State: SessionState.Naming } =>
                [new('t', "perches were turned", Act.NameTurns, Question: "What was turned, up positive, such as RF 0.5 LR -0.25:"), new('o', "something else was changed", Act.NameOther, Question: "What was changed:"), new('n', "nothing was", Act.NameNothing)],
            { CanConfirm: true } => [.. Causes(session, units), new('c', "nothing was wrong: believe it", Act.Confirm), Turned],
            { WeighNext: true } => [Weigh(session, isWaiting), .. session.State == SessionState.Baseline ? [] : (Offer[])[Turned]],
            { State: SessionState.Finishing, OpenAdjustments.Count: 0 } => [.. LastSteps(session, units), Turned],
            _ when Left(session) is { Count: > 0 } left => [new(Offer.Enter, "all of it was turned as planned", Act.AsPlanned), .. left, Turned, Weigh(session, isWaiting) with { Key = 'w' }],
            _ => [Weigh(session, isWaiting), Turned],
        };
        return [.. now, .. session.OpenAdjustments.Count > 0 ? [new Offer('u', "takes the last turn back", Act.Undo)] : Array.Empty<Offer>(),
            new('x', "gives the session up", Act.Abandon, Question: "Why is it given up?"), new('?', "cautions in full", Act.TellCautions), Leave];
    }

    /// <summary>Before anything else, once for each name in a session.</summary>
    public static IReadOnlyList<Offer> Unread => [new(Offer.Enter, "I have read this", Act.ReadCautions), Leave];

    private static Offer Leave { get; } = new('q', "leaves; the session stays", Act.Leave);

    private static Offer Turned { get; } = new('t', "turned otherwise", Act.Turned, Question: "What was turned, up positive, such as RF 0.5 LR -0.25:");

    private static Offer Weigh(Session session, bool isWaiting) => isWaiting
        ? new(Offer.Enter, "does not weigh after all", Act.Weigh)
        : new(Offer.Enter, session.State == SessionState.Baseline ? "weighs the baseline once it has settled" : "weighs once it has settled", Act.Weigh);

    /// <summary>The check that is next.</summary>
    public static Check? Next(IEnumerable<Check> checks) => checks.FirstOrDefault(c => !c.Done && !c.Skipped);

    private static IEnumerable<Offer> Checks(IReadOnlyList<Check> checks, Units units)
    {
        if (Next(checks) is not { } check)
            yield break;
        if (!check.SeenOtherwise)
        {
            yield return new(Offer.Enter, check.LastValue.Length > 0 ? $"done, again {PeerText.Clean(check.LastValue, 24)}" : "done", Act.Tick, Value: check.LastValue);
            if (check.Asks.Length > 0)
                yield return new('v', $"done, with a value ({AskedUnits.Of(check.Asks, units)})", Act.Tick, Question: $"{AskedUnits.Of(check.Asks, units)}:");
        }

        yield return new('l', "leaves it out today", Act.LeaveOut, Question: "Why is it left out?");
        if (checks.Count(c => c is { Done: false, Skipped: false, SeenOtherwise: false }) > 1)
            yield return new('r', "ticks the rest together, not individually confirmed", Act.TickRest);
    }

    private static IEnumerable<Offer> LastSteps(Session session, Units units) => Next(session.LastSteps) is not null ? Checks(session.LastSteps, units)
        : session.Standing?.Verdict == AimVerdict.OnTarget ? [new(Offer.Enter, "finishes the session", Act.Finish)]
        : [new(Offer.Enter, "finishes it though the verdict is not sure", Act.Finish, Question: "Why is it finished so?"), Weigh(session, isWaiting: false) with { Key = 'w' }];

    private static List<Offer> Left(Session session) =>
        [.. session.Perches.Where(p => p.Left != 0).Select(p => new Offer((char)('1' + WireCorners.All.ToList().IndexOf(p.Corner)), $"{p.Corner.Name()} done", Act.One, WireCorners.All.ToList().IndexOf(p.Corner)))];

    // Only what would put the record right is a key; the others stand above as words.
    private static IEnumerable<Offer> Causes(Session session, Units units) =>
        session.Weighings is [.., var newest] ? newest.Causes.Index().Where(c => c.Item.Turns is not null).Take(MostCauses).Select((c, k) => new Offer((char)('1' + k), $"that was it: {PeerText.Clean(c.Item.Said.In(units.Mass, units.Length), 60)}", Act.PutRight, c.Index)) : [];
}
