namespace ScaleLink.Weighing.Cars;

/// <summary>Something that is wrong or doubtful about a car, a patch or a plan.</summary>
/// <param name="Code">Stays the same from version to version, see <see cref="CarCodes"/>.</param>
/// <param name="Message">What is wrong, with the numbers that show it.</param>
/// <param name="Mend">What to do next.</param>
public sealed record Finding(string Code, string Message, string Mend)
{
    /// <summary>Which value it is about, or where that stands in a document, such as <c>front.motion_ratio</c>. Empty: about the whole.</summary>
    public string Place { get; init; } = "";

    /// <summary>Line of the place in the document, from 1. Null: not about a line.</summary>
    public int? Line { get; init; }

    /// <inheritdoc/>
    public override string ToString() => $"{Code} {Message} {Mend}";
}
