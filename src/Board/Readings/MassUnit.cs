namespace ScaleLink.Board.Readings;

/// <summary>What loads are shown in. Inside everything stays in kilograms.</summary>
/// <param name="Name">Its sign.</param>
/// <param name="Kilograms">One of it in kilograms, exact.</param>
public sealed record MassUnit(string Name, double Kilograms)
{
    /// <summary>Kilogram.</summary>
    public static MassUnit Kilogram { get; } = new("kg", 1);

    /// <summary>Avoirdupois pound, exact by definition (NIST Special Publication 811:2008, appendix B.8).</summary>
    public static MassUnit Pound { get; } = new("lb", 0.45359237);

    /// <summary>The unit of that name; kilograms for a name that is not known.</summary>
    public static MassUnit Named(string? name) => name == Pound.Name ? Pound : Kilogram;
}
