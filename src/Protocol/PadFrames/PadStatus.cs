namespace ScaleLink.Protocol.PadFrames;

/// <summary>What a pad says of itself with every sample.</summary>
[Flags]
enum PadStatus : ushort
{
    /// <summary>Nothing to report.</summary>
    None = 0,
    /// <summary>The converter of cell 0 is at its limit: its count is not a measurement.</summary>
    Cell0AtLimit = 1 << 0,
    /// <summary>The same for cell 1.</summary>
    Cell1AtLimit = 1 << 1,
    /// <summary>The same for cell 2.</summary>
    Cell2AtLimit = 1 << 2,
    /// <summary>The same for cell 3.</summary>
    Cell3AtLimit = 1 << 3,
    /// <summary>The same for cell 4.</summary>
    Cell4AtLimit = 1 << 4,
    /// <summary>The same for cell 5.</summary>
    Cell5AtLimit = 1 << 5,
    /// <summary>The same for cell 6.</summary>
    Cell6AtLimit = 1 << 6,
    /// <summary>The same for cell 7.</summary>
    Cell7AtLimit = 1 << 7,
    /// <summary>Every cell's limit bit: a mask.</summary>
    AnyCellAtLimit = 0x00FF,
    /// <summary>The bridges' excitation is below what the pad needs.</summary>
    ExcitationLow = 1 << 8,
    /// <summary>A converter does not answer.</summary>
    ConverterFault = 1 << 9,
    /// <summary>The inclinometer does not answer.</summary>
    TiltFault = 1 << 10,
    /// <summary>The thermometer does not answer.</summary>
    TemperatureFault = 1 << 11,
    /// <summary>The first sample after a start.</summary>
    Restarted = 1 << 12,
    /// <summary>A setting changed since the sample before.</summary>
    SettingChanged = 1 << 13,
    /// <summary>Every bit with a meaning: a mask. The other two are zero and ignored.</summary>
    Defined = 0x3FFF,
}
