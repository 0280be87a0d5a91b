using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;
using ScaleLink.Measure;

namespace ScaleLink.Client.Watch;

/// <summary>Beside the large number: verdict, aim, target, and what to do or why.</summary>
internal static class StatusPanel
{
    private const int LongestRemark = 200;
    private const int LeastWidth = 10;

    public static void Draw(Canvas canvas, int column, int row, WatchScene scene, Glyphs glyphs)
    {
        var loads = scene.Loads.Message;
        if (scene.Loads.Freshness == Freshness.Live)
        {
            var (verdict, ink) = Verdict(loads!, glyphs);
            canvas.Put(column, row, verdict, ink);
            DrawAim(canvas, column, row + 1, loads!, glyphs);
        }
        else
        {
            canvas.Put(column, row, State(scene.Loads), Ink.Uncertain);
        }

        if (loads?.Target is { } target)
            canvas.Put(column, row + 2, $"target {AimWords.Target(target, glyphs)}");
        var lines = TextWrap.Lines(scene.Action ?? Reason(scene, glyphs), Math.Max(LeastWidth, canvas.Width - column - 1), 2);
        for (var i = 0; i < lines.Count; i++)
            canvas.Put(column, row + 3 + i, lines[i], scene.Action is null ? Ink.Normal : Ink.Strong);
    }

    private static string State(Judged<Loads> view) => view switch
    {
        { Freshness: Freshness.Held, Age: { } age } => $"HELD: {Words.Age(age)} old",
        { Freshness: Freshness.Held } => "HELD: age not known",
        _ => "ABSENT: no reading",
    };

    private static string Reason(WatchScene scene, Glyphs glyphs) => scene.Loads switch
    {
        { Trouble: { Message: var message } } => glyphs.Tell(message),
        { Freshness: Freshness.Live, Message: { } loads } => glyphs.Tell(loads.RemarkSaid, LongestRemark),
        _ => "Waiting for the daemon's first reading.",
    };

    private static (string, Ink) Verdict(Loads loads, Glyphs glyphs) => loads.Verdict switch
    {
        Api.V1.Verdict.Settled => ($"{glyphs.Settled} SETTLED{(loads.WeighingReady ? ", fit for the record" : "")}", Ink.Good),
        Api.V1.Verdict.Settling => ($"{glyphs.Moving} COMING TO REST{(loads.HasSettledInS ? $", about {loads.SettledInS:0} s" : "")}", Ink.Uncertain),
        Api.V1.Verdict.Moving => ($"{glyphs.Moving} MOVING: nothing claimed", Ink.Uncertain),
        Api.V1.Verdict.Disturbed => ("! DISTURBED", Ink.Uncertain),
        Api.V1.Verdict.Raised => ("RAISED: no loads", Ink.Strong),
        Api.V1.Verdict.Incomplete => ("? NOT ALL LOADS KNOWN", Ink.Bad),
        _ => ("?", Ink.Bad),
    };

    private static void DrawAim(Canvas canvas, int column, int row, Loads loads, Glyphs glyphs)
    {
        var aim = loads.Aim;
        var (mark, ink) = aim switch
        {
            Aim.Within => (glyphs.ToleranceBar, Ink.Good),
            Aim.High => (glyphs.High, Ink.Bad),
            Aim.Low => (glyphs.Low, Ink.Bad),
            _ => ('?', Ink.Uncertain),
        };
        var words = aim switch
        {
            Aim.Within => "ON TARGET",
            Aim.High => $"HIGH by {AimWords.Off(loads)} %",
            Aim.Low => $"LOW by {AimWords.Off(loads)} %",
            Aim.TooCloseToTell => "TOO CLOSE TO THE EDGE TO TELL",
            _ => null,
        };
        if (words is not null)
            canvas.Put(column, row, $"{mark} {words}", ink);
    }
}
