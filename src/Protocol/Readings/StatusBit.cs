using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Readings;

/// <summary>One bit of a device's status word.</summary>
/// <param name="Bit">Its place, 0 the lowest, up to 31.</param>
/// <param name="Means">What it says when it is set.</param>
readonly record struct StatusBit(int Bit, PadStatus Means);
