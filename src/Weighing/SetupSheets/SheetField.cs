namespace ScaleLink.Weighing.SetupSheets;

/// <summary>One thing that a setup sheet holds.</summary>
/// <param name="Group">The part of the sheet, such as "springs"; also the block in a document.</param>
/// <param name="Name">Within the group, such as "rate".</param>
/// <param name="Words">For people.</param>
/// <param name="Scope">How many values it has.</param>
/// <param name="Unit">Of its numbers; null: it is a text.</param>
/// <param name="Low">Least number that any car has, in the base unit.</param>
/// <param name="High">Largest number.</param>
sealed record SheetField(string Group, string Name, string Words, SheetScope Scope, SheetUnit? Unit, double Low, double High)
{
    /// <summary>Names it, such as "springs.rate".</summary>
    public string Key { get; } = $"{Group}.{Name}";

    /// <summary>Its name in a document: with its unit.</summary>
    public string DocumentName { get; } = Unit is { Ending.Length: > 0 } unit && !Name.EndsWith($"_{unit.Ending}", StringComparison.Ordinal) ? $"{Name}_{unit.Ending}" : Name;

    /// <summary>Turning a perch changes what the car has there: the sheet says what was before the turns.</summary>
    public bool MovesWithPerches { get; init; }

    /// <summary>Where it can have values; none for places that the crew names.</summary>
    public IReadOnlyList<string> Places { get; } = Scope switch
    {
        SheetScope.WholeCar => [""],
        SheetScope.EachAxle => ["front", "rear"],
        SheetScope.EachCorner => ["LF", "RF", "LR", "RR"],
        _ => [],
    };
}
