namespace ScaleLink.Measure;

/// <summary>A place under the car, seen from the driver's seat. The order is the order of every list of four.</summary>
public enum Corner
{
    /// <summary>Left front.</summary>
    LF,
    /// <summary>Right front.</summary>
    RF,
    /// <summary>Left rear.</summary>
    LR,
    /// <summary>Right rear.</summary>
    RR,
}
