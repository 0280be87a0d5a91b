namespace ScaleLink.Protocol.Modbus;

/// <summary>What a decoder has seen since it was made.</summary>
/// <param name="Bytes">Bytes consumed, of every sort.</param>
/// <param name="Frames">Frames delivered.</param>
/// <param name="Echoes">Times that the question itself came back, as from adapters that hear what they send.</param>
/// <param name="BadFrames">Stretches of three bytes and more that belong to no frame. A shorter one is the line's own noise when a driver switches.</param>
/// <param name="SkippedBytes">Bytes that belong to no frame.</param>
readonly record struct ModbusCounters(long Bytes, long Frames, long Echoes, long BadFrames, long SkippedBytes);
