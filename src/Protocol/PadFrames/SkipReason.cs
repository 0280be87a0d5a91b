namespace ScaleLink.Protocol.PadFrames;

/// <summary>Why the decoder did not deliver a stretch of the stream.</summary>
enum SkipReason
{
    /// <summary>Nothing was skipped.</summary>
    None = 0,
    /// <summary>The end of something whose beginning was not seen: the host joined in the middle. Not counted as a bad frame.</summary>
    BeforeFirstDelimiter,
    /// <summary>Too short to be a frame.</summary>
    TooShort,
    /// <summary>No delimiter within the longest frame. Often a wrong baud rate, or a device that speaks something else.</summary>
    TooLong,
    /// <summary>The check does not belong to the bytes: damage on the way.</summary>
    BadCheck,
    /// <summary>The check is good but the byte stuffing is not: the pad's encoder is wrong.</summary>
    BadStuffing,
    /// <summary>The check is good but the body is not as long as it says.</summary>
    WrongLength,
    /// <summary>The check is good but the body breaks the rules of its kind: the pad's firmware is wrong.</summary>
    Malformed,
    /// <summary>Exactly what was missing from the damaged frame before it: a damaged byte that became a delimiter.</summary>
    TailOfDamaged,
}
