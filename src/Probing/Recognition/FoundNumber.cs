using System.Globalization;

namespace ScaleLink.Probing.Recognition;

/// <summary>One number of a line, as all lines have it.</summary>
/// <param name="Position">Which one, counted from 1.</param>
/// <param name="Before">The text before it.</param>
/// <param name="After">The text behind it.</param>
/// <param name="Least">Smallest value heard.</param>
/// <param name="Largest">Largest value heard.</param>
internal sealed record FoundNumber(int Position, string Before, string After, double Least, double Largest)
{
    /// <summary>The unit of mass behind it, as in the bay file: kg, lb, g; nothing when there is none.</summary>
    public string? Unit { get; init; }

    /// <summary>What it is by the word before it: pitch, roll or temperature; nothing when the word says nothing of the kind.</summary>
    public string? Meaning { get; init; }

    /// <summary>Whether it goes on by the same step from line to line, as a clock or a counter does.</summary>
    public bool Counts { get; init; }

    /// <summary>Whether it may be the load.</summary>
    public bool MayBeLoad => Meaning is null && !Counts;

    /// <summary>For people, such as <c>number 2, behind "net", from 12.4 to 12.6 kg</c>.</summary>
    public string Describe()
    {
        var word = Before.Trim() is { Length: > 0 } before ? $", behind \"{before}\"" : "";
        var values = Least == Largest ? Text(Least) : $"from {Text(Least)} to {Text(Largest)}";
        return string.Create(CultureInfo.InvariantCulture, $"number {Position}{word}, {values}{(Unit is null ? "" : $" {Unit}")}");
    }

    private static string Text(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
