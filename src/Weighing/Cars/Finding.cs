namespace ScaleLink.Weighing.Cars;

/// <summary>Something that is wrong or doubtful about a car, a patch or a plan.</summary>
/// <param name="Code">Stays the same from version to version, see <see cref="CarCodes"/>.</param>
/// <param name="Message">What is wrong, with the numbers that show it.</param>
/// <param name="Mend">What to do next.</param>
public sealed record Finding(string Code, string Message, string Mend)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Code} {Message} {Mend}";
}
