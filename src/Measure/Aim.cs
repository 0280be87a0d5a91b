namespace ScaleLink.Measure;

/// <summary>Where a value stands against its target.</summary>
public enum Aim
{
    /// <summary>No target, or nothing is claimed about the value.</summary>
    Unknown,
    /// <summary>Inside the tolerance with the whole interval of the uncertainty.</summary>
    Within,
    /// <summary>Above it with the whole interval.</summary>
    High,
    /// <summary>Below it with the whole interval.</summary>
    Low,
    /// <summary>The interval reaches over the edge of the tolerance: the reading cannot tell.</summary>
    TooCloseToTell,
}
