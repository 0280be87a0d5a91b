using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Watch;

/// <summary>What is read from farthest: cross weight in large, or that the car is up; and how old the picture is.</summary>
internal static class NumberBlock
{
    /// <summary>The large number; gives the column behind it.</summary>
    public static int Draw(Canvas canvas, int row, WatchScene scene, Glyphs glyphs)
    {
        var cross = scene.Loads.Message?.CrossWeightPercent is { } value ? scene.Steady.Percent("cross weight", value) : null;
        var (text, fill, ink) = scene.Loads switch
        {
            { Freshness: Freshness.Live, Message.Verdict: Verdict.Raised } => ("RAISED", glyphs.Solid, Ink.Strong),
            { Freshness: Freshness.Held } when cross is not null => (cross.Estimate, glyphs.Faint, Ink.Faint),
            _ when cross is { IsRough: true } => (cross.Estimate, glyphs.Medium, Ink.Normal),
            _ when cross is not null => (cross.Estimate, glyphs.Solid, Ink.Strong),
            _ => ("--.--", glyphs.Faint, Ink.Faint),
        };
        return BigText.Draw(canvas, 1, row, text, fill, ink);
    }

    /// <summary>Bay and age, at the ends of a row; gives the column behind the bay.</summary>
    public static int DrawHeader(Canvas canvas, WatchScene scene)
    {
        var (word, ink) = scene.Loads switch
        {
            { Freshness: Freshness.Live, Age: { } age } => ($"LIVE {Words.Age(age)}", Ink.Good),
            { Freshness: Freshness.Held } => ("HELD", Ink.Uncertain),
            _ => ("ABSENT", Ink.Bad),
        };
        var after = canvas.Put(1, 0, scene.Loads.Message is { } loads ? PeerText.Clean(loads.Bay, 16) : "ScaleLink", Ink.Strong);
        canvas.PutBefore(canvas.Width - 1, 0, word, ink);
        return after;
    }
}
