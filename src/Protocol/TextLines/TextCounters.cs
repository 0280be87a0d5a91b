namespace ScaleLink.Protocol.TextLines;

/// <summary>What a decoder has seen since it was made.</summary>
/// <param name="Bytes">Bytes consumed, of every sort.</param>
/// <param name="Lines">Lines that gave a reading.</param>
/// <param name="RefusedLines">Lines that did not fit, were too long or held bytes that are no text.</param>
/// <param name="SkippedBytes">Bytes in refused lines, their ends included.</param>
readonly record struct TextCounters(long Bytes, long Lines, long RefusedLines, long SkippedBytes);
