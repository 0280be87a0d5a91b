namespace ScaleLink.Weighing.SiteCheck;

/// <summary>Something that stood on an empty pad, or pulled at it, for a while. It is no drift and taken out of the trend.</summary>
/// <param name="FromSeconds">Since the watch began.</param>
/// <param name="ToSeconds">Since the watch began.</param>
/// <param name="PeakKg">Largest departure, with its sign, kg.</param>
/// <param name="ShiftKg">How much further the zero stands after it than before, kg; zero where that cannot be told from noise.</param>
sealed record PadTouch(double FromSeconds, double ToSeconds, double PeakKg, double ShiftKg);
