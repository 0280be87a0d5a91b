using Google.Protobuf.WellKnownTypes;
using ScaleLink.Measure;

namespace ScaleLink.Api;

/// <summary>Moments of the wire as people read them, by <see cref="LocalTime"/> in this device's zone. A moment that is not known is an empty text.</summary>
public static class WireTimes
{
    /// <summary>To the minute: 2026-05-02 10:30 +02:00.</summary>
    public static string LocalMinute(this Timestamp? at) => at is null ? "" : LocalTime.Minute(at.ToDateTimeOffset());

    /// <summary>To the second: 2026-05-02 10:30:09 +02:00.</summary>
    public static string LocalSecond(this Timestamp? at) => at is null ? "" : LocalTime.Second(at.ToDateTimeOffset());

    /// <summary>The day at this place: 2026-05-02.</summary>
    public static string LocalDay(this Timestamp? at) => at is null ? "" : LocalTime.Day(at.ToDateTimeOffset());

    /// <summary>The second of a day that is known: 10:30:09 +02:00.</summary>
    public static string LocalSecondOfDay(this Timestamp? at) => at is null ? "" : LocalTime.SecondOfDay(at.ToDateTimeOffset());
}
