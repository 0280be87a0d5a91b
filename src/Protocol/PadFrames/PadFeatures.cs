namespace ScaleLink.Protocol.PadFrames;

/// <summary>What a pad can do beyond counting.</summary>
[Flags]
enum PadFeatures : byte
{
    /// <summary>Cells only.</summary>
    None = 0,
    /// <summary>It has a two-axis inclinometer.</summary>
    Tilt = 1 << 0,
    /// <summary>It has a thermometer.</summary>
    Temperature = 1 << 1,
    /// <summary>It takes settings.</summary>
    Settings = 1 << 2,
    /// <summary>Every bit with a meaning: a mask. The others are zero and ignored.</summary>
    Defined = 0x07,
}
