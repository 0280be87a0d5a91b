using ScaleLink.Client.Runtime;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using static ScaleLink.Measure.Sentences.Arguments;
using Sentence = ScaleLink.Measure.Sentences.Sentence;

namespace ScaleLink.Client.Cars;

/// <summary>One state the car races in, as it is shown.</summary>
/// <param name="Name">Tank and driver.</param>
/// <param name="Total">In the units of the terminal.</param>
/// <param name="FrontWeight">Percent.</param>
/// <param name="LeftSideWeight">Percent.</param>
/// <param name="CrossWeight">Percent.</param>
/// <param name="CrossWeightAt">Cross weight, percent, at which an aim is met.</param>
internal sealed record RaceRow(string Name, string Total, string FrontWeight, string LeftSideWeight, string CrossWeight, Func<BalanceGoal, double> CrossWeightAt);

/// <summary>Start and finish with each driver, one below the other, and the class minimum.</summary>
internal static class RaceTable
{
    private const int NameWidth = 30, TotalWidth = 14, ShareWidth = 14;

    public static IEnumerable<string> Lines(Glyphs glyphs, IReadOnlyList<RaceRow> rows)
    {
        if (rows.Count == 0)
            yield break;
        yield return "As it races, perches untouched. The last three: the cross weight at which that aim would be met.";
        yield return $"  {"",-NameWidth}{$"total {glyphs.MassSign()}",TotalWidth}{"front %",ShareWidth}{"left %",ShareWidth}{"cross %",ShareWidth}    LF=RF   LR=RR   left-side weights alike";
        foreach (var row in rows)
            yield return $"  {PeerText.Clean(row.Name, NameWidth),-NameWidth}{row.Total,TotalWidth}{row.FrontWeight,ShareWidth}{row.LeftSideWeight,ShareWidth}{row.CrossWeight,ShareWidth}"
                + $"    {row.CrossWeightAt(BalanceGoal.EqualFrontLoads),5:0.0}   {row.CrossWeightAt(BalanceGoal.EqualRearLoads),5:0.0}   {row.CrossWeightAt(BalanceGoal.EqualLeftSideWeights),5:0.0}";
    }

    public static string Name(FuelLevel fuel, string? driver) =>
        string.Join(", ", new[] { fuel switch { FuelLevel.Start => "start", FuelLevel.Finish => "finish", FuelLevel.Empty => "empty tank", _ => "" }, driver ?? "" }.Where(w => w.Length > 0));

    public static string Standing(Glyphs glyphs, string lightest, string total, double over, double minimum, double missing, double spare) =>
        glyphs.Line($"Lightest state ({PeerText.Clean(lightest, NameWidth)}): {total} {glyphs.MassSign()}, {Kg(Math.Abs(over)):0.0} {(over < 0 ? "under" : "over")} the minimum of {Kg(minimum):0.#}; {(missing > 0 ? (Sentence)$"{Kg(missing):0.0} missing" : $"{Kg(spare):0.0} to spare")} at 95 % with the margin asked for. The scrutineer's scales decide.");
}
