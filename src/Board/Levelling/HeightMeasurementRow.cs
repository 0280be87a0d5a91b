using ScaleLink.Board.Readings;

namespace ScaleLink.Board.Levelling;

/// <summary>How much higher one pad stands than another, as a row of the form has it.</summary>
/// <param name="from">The pad that is measured from.</param>
/// <param name="to">The pad that a positive number puts higher.</param>
public sealed class HeightMeasurementRow(Corner from, Corner to)
{
    /// <summary>A difference read off directly.</summary>
    public const string Direct = "feeler or water level";

    /// <summary>A level beam with an inclinometer on it, read both ways round: its zero drops out.</summary>
    public const string Beam = "beam with inclinometer";

    /// <summary>How a difference can be measured.</summary>
    public static IReadOnlyList<string> Ways { get; } = [Direct, Beam];

    /// <summary>The pad that is measured from.</summary>
    public Corner From { get; set; } = from;

    /// <summary>The pad that a positive number puts higher.</summary>
    public Corner To { get; set; } = to;

    /// <summary>One of <see cref="Ways"/>.</summary>
    public string Way { get; set; } = Direct;

    /// <summary>As typed, in the unit of lengths.</summary>
    public string Difference { get; set; } = "";

    /// <summary>Between the feet of the beam, as typed, in the unit of lengths.</summary>
    public string Span { get; set; } = "";

    /// <summary>As typed, degrees; positive where the far end is high.</summary>
    public string Reading { get; set; } = "";

    /// <summary>With beam and inclinometer turned end for end, as typed, degrees in the instrument's own sign.</summary>
    public string Reversed { get; set; } = "";

    /// <summary>Whether a beam was used.</summary>
    public bool IsBeam => Way == Beam;

    /// <summary>Nothing was entered: this pair was not measured.</summary>
    public bool IsEmpty => string.IsNullOrWhiteSpace(IsBeam ? Span + Reading + Reversed : Difference);

    /// <summary>"LF to RF".</summary>
    public string Name => $"{From.Name()} to {To.Name()}";

    /// <summary>What is not a number yet; empty when all is there. The span may stand in a row above.</summary>
    public string Lacking(string span) => IsBeam
        ? Entry.Number(span) is not > 0 ? "distance between the feet" : Entry.Number(Reading) is null ? "reading" : Entry.Number(Reversed) is null ? "reading turned end for end" : ""
        : Entry.Number(Difference) is null ? "difference" : "";
}
