namespace ScaleLink.Weighing.Freezing;

/// <summary>What was seen of a cell so far.</summary>
/// <param name="Value">Its newest number.</param>
/// <param name="Division">Smallest step seen between two numbers that differ; 0: none was seen.</param>
/// <param name="Changes">How often the number has changed.</param>
internal readonly record struct SeenValue(long Value, long Division, long Changes);
