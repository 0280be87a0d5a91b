namespace ScaleLink.Protocol.PadFrames;

/// <summary>What a decoder has seen since it was made.</summary>
/// <param name="Bytes">Bytes consumed, of every sort.</param>
/// <param name="Frames">Frames delivered.</param>
/// <param name="BadFrames">Stretches between delimiters that were refused.</param>
/// <param name="SkippedBytes">Bytes in refused stretches, delimiters included.</param>
/// <param name="UnknownKinds">Good frames of a kind that this library does not know; they are no fault.</param>
readonly record struct DecoderCounters(long Bytes, long Frames, long BadFrames, long SkippedBytes, long UnknownKinds);
