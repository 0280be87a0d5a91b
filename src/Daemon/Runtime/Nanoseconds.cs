namespace ScaleLink.Daemon.Runtime;

/// <summary>Spans of time as the pipeline counts them.</summary>
internal static class Nanoseconds
{
    public const long PerMicrosecond = 1_000;
    public const long PerMillisecond = 1_000_000;
    public const long PerSecond = 1_000_000_000;

    public static double ToMilliseconds(long ns) => ns / (double)PerMillisecond;
}
