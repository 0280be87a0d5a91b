namespace ScaleLink.Daemon.Pipeline;

/// <summary>The reading of an empty pad.</summary>
/// <param name="SerialNumber">The pad it belongs to.</param>
/// <param name="Counts">Counts summed over the cells.</param>
/// <param name="TakenAt">UTC.</param>
/// <param name="Who">Who took it.</param>
/// <param name="ShiftKg">Change against the zero before, kg; absent for the first.</param>
public sealed record ZeroPoint(string SerialNumber, double Counts, DateTimeOffset TakenAt, string Who, double? ShiftKg);
