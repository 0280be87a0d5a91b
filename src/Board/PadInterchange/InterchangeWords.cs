using ScaleLink.Api.V1;

namespace ScaleLink.Board.PadInterchange;

/// <summary>Pads interchanged under one car, in words for the crew.</summary>
internal static class InterchangeWords
{
    /// <summary>How many placements there are in all: each pad comes to each corner once.</summary>
    public const int Placements = 4;

    public static string State(InterchangeState state) => state switch
    {
        InterchangeState.Measuring => "weighing",
        InterchangeState.Review => "all weighed",
        InterchangeState.Finished => "finished",
        InterchangeState.Abandoned => "abandoned",
        _ => "",
    };

    /// <summary>What to do now.</summary>
    public static string Do(InterchangeView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var away = PadMove.Of(view).Where(m => !m.IsThere).Select(m => m.Name).ToList();
        return (view.Ready, view.Next.Count, away.Count) switch
        {
            (true, _, _) => "The car is at rest on its pads: put this placement on record.",
            (_, 0, _) => "Zero the empty pads, lower the car onto them and settle it. Each pad stays where it stands.",
            (_, _, 0) => "The pads stand where they have to. Zero them empty, lower the car, settle it the same way as before.",
            _ => $"Car onto stands, then carry the pads: {string.Join(", ", away)}. Plug each into the cable of its new corner.",
        };
    }

    /// <summary>"0.123 % high ± 0.045": against the mean of the four; the interval covers 95 %.</summary>
    public static string Reads(PadDeparture pad)
    {
        ArgumentNullException.ThrowIfNull(pad);
        var percent = Math.Round(100 * pad.Relative, 3);
        var way = percent switch { < 0 => " low", > 0 => " high", _ => "" };
        return $"{Math.Abs(percent):0.000} %{way} \u00b1 {100 * pad.Expanded:0.000}";
    }

    public static string Verdict(PadDeparture pad)
    {
        ArgumentNullException.ThrowIfNull(pad);
        return pad.Departs ? "departs: calibrate it with masses" : "no departure seen";
    }
}
