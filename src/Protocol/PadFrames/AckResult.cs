namespace ScaleLink.Protocol.PadFrames;

/// <summary>What became of a wish. A host takes every number but 0 as refused.</summary>
enum AckResult : byte
{
    /// <summary>The value is in effect.</summary>
    Done = 0,
    /// <summary>The pad has no such setting.</summary>
    UnknownSetting = 1,
    /// <summary>The setting cannot take that value.</summary>
    OutOfRange = 2,
    /// <summary>Not now; ask again.</summary>
    Busy = 3,
}
