namespace ScaleLink.Weighing.WorkSessions.Planning;

/// <summary>Turns in the words of the workshop floor: largest first, fractions as they are called out.</summary>
static class CrewWords
{
    static readonly string[] Eighths = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];
    static readonly string[] PlainEighths = ["", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];

    /// <summary>For example "LR up 1¼ turns, RF up ¾: then settle"; "nothing to turn" when there is nothing.</summary>
    /// <param name="turns">Turns, up positive.</param>
    /// <param name="plain">True for displays without fraction signs: "1 1/4".</param>
    public static string Say(in Corners turns, bool plain = false) => turns == default ? "nothing to turn" : $"{Turns(turns, plain)}: then settle";

    /// <summary>The same without the settling that follows: "LR up 1¼ turns, RF up ¾".</summary>
    public static string Turns(in Corners turns, bool plain = false)
    {
        var all = turns;
        var moves = Corners.All.ToArray().Where(c => all[c] != 0).OrderByDescending(c => Math.Abs(all[c])).ToList();
        if (moves.Count == 0)
            return "nothing to turn";
        var words = moves.Select((corner, i) => $"{corner} {(all[corner] > 0 ? "up" : "down")} {Amount(Math.Abs(all[corner]), plain)}{(i == 0 ? Unit(Math.Abs(all[corner])) : "")}");
        return string.Join(", ", words);
    }

    static string Unit(double turns) => turns > 1 ? " turns" : " turn";

    /// <summary>A number of turns without its direction: "1¼".</summary>
    public static string Amount(double turns, bool plain = false)
    {
        var amount = Math.Abs(turns);
        var eighths = (long)Math.Round(8 * amount);
        if (Math.Abs(8 * amount - eighths) > 1e-6)
            return $"{amount:0.##}";
        var (whole, part) = (eighths / 8, (plain ? PlainEighths : Eighths)[eighths % 8]);
        return whole == 0 ? part : part == "" ? $"{whole}" : plain ? $"{whole} {part}" : $"{whole}{part}";
    }
}
