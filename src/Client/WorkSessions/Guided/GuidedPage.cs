using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Client.WorkSessions.Guided;

/// <summary>The guided session on a screen of 40 columns and more: the verdict, four loads with what is to turn, what to do now, and the keys.</summary>
internal static class GuidedPage
{
    private const int LeastWidth = 40, MostWidth = 100, TwoColumns = 60, TraceHeight = 7, RoomForTrace = 24, Longest = 300;

    public static IReadOnlyList<string> Lines(GuidedState state, Shell shell, (int Width, int Height) size)
    {
        var (width, glyphs) = (Math.Clamp(size.Width, LeastWidth, MostWidth), shell.Glyphs);
        var page = new Page(width);
        page.Add(Head(state), Ink.Strong);
        if (state.Session.Freshness != Freshness.Live)
            page.Wrap($"HELD: {(state.Session.Trouble is { } trouble ? glyphs.Tell(trouble) : "Waiting for the daemon.")}", 2, Ink.Bad);
        // In full they need the whole of a narrow screen.
        if (state.Open is { } told && (state.IsUnread || state.TellsCautions))
            Cautions(page, told);
        else
            Work(page, state, size, width, glyphs);
        if (state.Message.Length > 0)
            page.Wrap(glyphs.Say(state.Message), 3, Ink.Uncertain);
        if (state.Question is { } question)
            page.Wrap(question, 2, Ink.Strong);
        else
            foreach (var offer in state.Keys)
                page.Wrap(glyphs.Say(offer.Label), 2, offer.Key == Offer.Enter ? Ink.Strong : Ink.Normal);
        return page.ToLines(shell, size.Height);
    }

    private static void Cautions(Page page, Session session)
    {
        page.Add("Cautions", Ink.Strong);
        foreach (var caution in session.SessionCautions)
            page.Wrap(PeerText.Clean(caution, Longest), 9, Ink.Uncertain);
    }

    private static void Work(Page page, GuidedState state, (int Width, int Height) size, int width, Glyphs glyphs)
    {
        Verdict(page, state, width, glyphs);
        Corners(page, state, width, glyphs);
        page.Add("");
        page.Wrap(Now(state, glyphs), 3, Ink.Strong);
        if (state.Open is { } session)
            Details(page, session, size, width, glyphs);
        page.Add("");
    }

    private static string Head(GuidedState state) => state.Open is { } session
        ? $"{PeerText.Clean(session.Car, 20)}  {SessionPage.StateWord(session.State)}  {PeerText.Clean(session.Bay, 16)}"
        : $"No session  {PeerText.Clean(state.Loads?.Message?.Bay ?? "", 16)}";

    private static void Verdict(Page page, GuidedState state, int width, Glyphs glyphs)
    {
        if (state.Live is not { } loads)
        {
            page.Add("no live loads", Ink.Bad);
            return;
        }

        var cross = loads.CrossWeightPercent is { } value ? Shown.Percent(value).Full(glyphs) : "no cross weight";
        page.Add($"{cross}   {Words.Verdict(loads.Verdict)}{(loads.WeighingReady ? width < TwoColumns ? ", ready" : ", fit for the record" : "")}", Ink.Strong);
        var standing = loads.Verdict == Api.V1.Verdict.Settled ? state.Open?.StandsNow(loads) : null;
        var (aim, words) = standing is not null ? (standing.Aim, PeerText.Clean(standing.Headline, 80)) : (loads.Aim, AimWords.Of(loads.Aim, loads, glyphs));
        page.Wrap(words.Length > 0 ? words : loads.Target is { } target ? $"target {AimWords.Target(target, glyphs)}" : "", 2, SessionPage.InkOf(aim));
    }

    // Front above rear, left on the left; on a narrow screen what is to turn stands below its load.
    private static void Corners(Page page, GuidedState state, int width, Glyphs glyphs)
    {
        var half = width / 2;
        foreach (var row in WireCorners.All.Chunk(2))
        {
            var cells = row.Select(corner => (Corner: corner, Load: Load(state.Live, corner, glyphs), Turn: Turn(state.Open, corner, glyphs))).ToList();
            page.Draw(width >= TwoColumns ? 1 : 2, (canvas, at) =>
            {
                foreach (var (k, cell) in cells.Index())
                {
                    var ink = cell.Corner.IsOfCrossWeight() ? Ink.RightFrontPair : Ink.LeftFrontPair;
                    var after = canvas.Put(k * half, at, $"{glyphs.Pair(cell.Corner)} {cell.Corner.Name()}", ink);
                    after = canvas.Put(after + 1, at, cell.Load);
                    if (width >= TwoColumns)
                        canvas.Put(after + 2, at, cell.Turn, Ink.Strong);
                    else
                        canvas.Put(k * half + 2, at + 1, cell.Turn, Ink.Strong);
                }
            });
        }
    }

    private static string Load(Loads? loads, Corner corner, Glyphs glyphs) => loads?.Corners.FirstOrDefault(c => c.Corner == corner)?.LoadKg is { } load ? $"{glyphs.Say(Shown.Kg(load, glyphs).Estimate),7} {glyphs.MassSign()}" : "      -";

    private static string Turn(Session? session, Corner corner, Glyphs glyphs) => session?.Perches.FirstOrDefault(p => p.Corner == corner) switch
    {
        { Left: not 0 and var left, Done: 0 } => $"{Sign(left, glyphs)} {CrewWords.Amount(left, !glyphs.IsRich)} to do",
        { Left: not 0 and var left } => $"{Sign(left, glyphs)} {CrewWords.Amount(left, !glyphs.IsRich)} left to do",
        { Done: not 0 and var done } => $"was {(done > 0 ? "up" : "down")} {CrewWords.Amount(done, !glyphs.IsRich)}",
        _ => "",
    };

    private static char Sign(double turns, Glyphs glyphs) => turns > 0 ? glyphs.High : glyphs.Low;

    private static string Now(GuidedState state, Glyphs glyphs) => state switch
    {
        { Open: null } => "No session is open in this bay. Choose a car first where none is chosen: scalelink car use FILE.",
        { IsWaiting: true, Live.WeighingReady: false } => "Waiting for the car to settle: hands off, nobody near the pads. It is weighed by itself then.",
        _ => $"Now: {glyphs.Say(PeerText.Clean(state.Open.Next, Longest))}",
    };

    private static void Details(Page page, Session session, (int Width, int Height) size, int width, Glyphs glyphs)
    {
        if (Offers.Next(session.State switch { SessionState.Preparing => session.Preparation, SessionState.Finishing when !session.WeighNext => session.LastSteps, _ => [] }) is { } check)
        {
            page.Wrap(PeerText.Clean(check.Hint, Longest), 3);
            foreach (var finding in check.Findings.Take(2))
                page.Wrap(PlanPage.FindingLine(finding, glyphs), 3, Ink.Uncertain);
        }

        foreach (var finding in session.Findings.Take(2))
            page.Wrap(PlanPage.FindingLine(finding, glyphs), 3, Ink.Uncertain);
        page.Wrap($"Caution: {PeerText.Clean(session.CautionLine, Longest)}", 2, Ink.Faint);
        if (session.Trace.Count > 0 && size.Height >= RoomForTrace && width >= TwoColumns)
            page.Draw(TraceHeight, (canvas, row) => SessionTracePicture.Draw(canvas, (0, row), (Math.Min(width, TwoColumns), TraceHeight), session, glyphs));
    }
}
