namespace ScaleLink.Measure.Age;

/// <summary>What a reader may do with a value. There is no fourth way: a number is live, held, or absent.</summary>
public enum Freshness
{
    /// <summary>There is no value, or none that still means anything.</summary>
    Absent,
    /// <summary>An old value: to be shown as old, with its age, and without a verdict.</summary>
    Held,
    /// <summary>Within its permitted age.</summary>
    Live,
}
