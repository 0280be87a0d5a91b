using ScaleLink.Board.Drawing;

namespace ScaleLink.Board.Levelling;

/// <summary>The bubble of a round level on a pad, seen from above with the front of the car up: it swims to the high side.</summary>
internal sealed record PadBubble(double PitchDegrees, double RollDegrees)
{
    public const double Size = 100, Radius = 46, Drop = 10;
    // At the glass: twice what most levellers for pads can take out. Common practice, no published source.
    public const double FullDegrees = 2;
    /// <summary>Within this a pad counts as level here: F cos of it differs from F by a part in 160 000.</summary>
    public const double LevelDegrees = 0.2;

    public bool IsLevel => double.Hypot(PitchDegrees, RollDegrees) <= LevelDegrees;

    /// <summary>Where the bubble stands. Nose down is positive pitch: the rear is high, and the bubble goes down the picture. Right side down is positive roll: it goes left.</summary>
    public Point Place
    {
        get
        {
            var tilt = double.Hypot(PitchDegrees, RollDegrees);
            if (tilt == 0)
                return new Point(Size / 2, Size / 2);
            var reach = Math.Min(tilt / FullDegrees, 1) * (Radius - Drop);
            return new Point(Size / 2 - RollDegrees / tilt * reach, Size / 2 + PitchDegrees / tilt * reach);
        }
    }

    /// <summary>Which side is high, in words.</summary>
    public string Words => IsLevel ? "level" : string.Join(" and ", new[]
    {
        Math.Abs(PitchDegrees) < LevelDegrees / 2 ? "" : PitchDegrees > 0 ? "rear high" : "front high",
        Math.Abs(RollDegrees) < LevelDegrees / 2 ? "" : RollDegrees > 0 ? "left high" : "right high",
    }.Where(w => w.Length > 0));
}
