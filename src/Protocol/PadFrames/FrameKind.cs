namespace ScaleLink.Protocol.PadFrames;

/// <summary>Byte 0 of a body: what the frame is for. 0x00 is never used.</summary>
enum FrameKind : byte
{
    /// <summary>No frame.</summary>
    None = 0x00,
    /// <summary>Pad to host: what the pad is.</summary>
    Hello = 0x01,
    /// <summary>Pad to host: one reading of every cell.</summary>
    Sample = 0x02,
    /// <summary>Host to pad: say hello now.</summary>
    AskHello = 0x10,
    /// <summary>Host to pad: change a setting.</summary>
    Set = 0x11,
    /// <summary>Pad to host: the outcome of a change.</summary>
    Acknowledgement = 0x12,
}
