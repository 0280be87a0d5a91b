namespace ScaleLink.Daemon.Runtime;

/// <summary>Something wrong with a pad, in force since an instant.</summary>
/// <param name="Code">Stable code: 100s port, 200s frame, 300s calibration, 400s publishing.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Mend">What to do next.</param>
/// <param name="SinceNs">When it began, ns on the daemon's clock.</param>
public sealed record Fault(string Code, string Message, string Mend, long SinceNs);
