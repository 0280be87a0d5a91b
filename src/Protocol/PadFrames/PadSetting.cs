namespace ScaleLink.Protocol.PadFrames;

/// <summary>What a host can change in a pad. A pad answers a number that it does not know with <see cref="AckResult.UnknownSetting"/>.</summary>
enum PadSetting : byte
{
    /// <summary>No setting.</summary>
    None = 0,
    /// <summary>Samples a second times 1000.</summary>
    SampleRate = 1,
    /// <summary>Blink for that many seconds, so that a person can find the pad.</summary>
    Identify = 2,
}
