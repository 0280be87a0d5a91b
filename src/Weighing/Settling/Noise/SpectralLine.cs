namespace ScaleLink.Weighing.Settling.Noise;

/// <summary>A steady oscillation in the readings: mains hum, a fan, an engine.</summary>
/// <param name="Hz">Where it appears; a faster one than half the sample rate appears folded.</param>
/// <param name="AmplitudeKg">Peak amplitude, kg.</param>
/// <param name="AboveFloor">Amplitude over the median amplitude of the spectrum around it.</param>
readonly record struct SpectralLine(double Hz, double AmplitudeKg, double AboveFloor);
