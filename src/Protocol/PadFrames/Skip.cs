namespace ScaleLink.Protocol.PadFrames;

/// <summary>A stretch of the stream that the decoder did not deliver.</summary>
/// <param name="Offset">Position of its first byte in the stream since the decoder was made.</param>
/// <param name="Length">Bytes, the delimiter included where one was seen.</param>
/// <param name="Reason">Why.</param>
readonly record struct Skip(long Offset, int Length, SkipReason Reason);
