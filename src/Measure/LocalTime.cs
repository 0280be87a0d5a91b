using System.Globalization;

namespace ScaleLink.Measure;

/// <summary>
/// A moment as people read it: the time of the place where it is read, with its distance from UTC, so that it can be mistaken for no other. Records, files for
/// programs and logs stay in UTC. ISO 8601 in its order and its offset, with spaces between (RFC 3339, 5.6, has the space too).
/// </summary>
public static class LocalTime
{
    /// <summary>To the minute: 2026-05-02 10:30 +02:00.</summary>
    /// <param name="at">The moment, whatever its offset.</param>
    /// <param name="zone">The zone to show it in; this device's unless given.</param>
    public static string Minute(DateTimeOffset at, TimeZoneInfo? zone = null) => Show(at, "yyyy-MM-dd HH:mm zzz", zone);

    /// <summary>To the second: 2026-05-02 10:30:09 +02:00.</summary>
    /// <inheritdoc cref="Minute"/>
    public static string Second(DateTimeOffset at, TimeZoneInfo? zone = null) => Show(at, "yyyy-MM-dd HH:mm:ss zzz", zone);

    /// <summary>The second of a day that is known: 10:30:09 +02:00.</summary>
    /// <inheritdoc cref="Minute"/>
    public static string SecondOfDay(DateTimeOffset at, TimeZoneInfo? zone = null) => Show(at, "HH:mm:ss zzz", zone);

    /// <summary>The day at that place: 2026-05-02.</summary>
    /// <inheritdoc cref="Minute"/>
    public static string Day(DateTimeOffset at, TimeZoneInfo? zone = null) => Show(at, "yyyy-MM-dd", zone);

    private static string Show(DateTimeOffset at, string format, TimeZoneInfo? zone) =>
        TimeZoneInfo.ConvertTime(at, zone ?? TimeZoneInfo.Local).ToString(format, CultureInfo.InvariantCulture);
}
