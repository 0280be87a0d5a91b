namespace ScaleLink.Protocol.Readings;

/// <summary>What a number from a pad stands for.</summary>
enum FieldMeaning
{
    /// <summary>The load on one cell, or on the whole pad.</summary>
    Load,
    /// <summary>Pitch of the pad, ISO 8855.</summary>
    Pitch,
    /// <summary>Roll of the pad, ISO 8855.</summary>
    Roll,
    /// <summary>Temperature of the pad.</summary>
    Temperature,
    /// <summary>Bits in which the device speaks of itself.</summary>
    Status,
}
