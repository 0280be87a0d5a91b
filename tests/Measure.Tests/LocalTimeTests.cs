using ScaleLink.Measure;

namespace Measure.Tests;

/// <summary>Offsets and the change to summer time are those of the zones' rules in the IANA time zone database.</summary>
public class LocalTimeTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    [Fact]
    public void A_time_is_that_of_the_place_with_its_offset()
    {
        var at = new DateTimeOffset(2026, 5, 2, 22, 30, 9, TimeSpan.Zero);

        Assert.Equal("2026-05-03 00:30 +02:00", LocalTime.Minute(at, Berlin));
        Assert.Equal("2026-05-03 00:30:09 +02:00", LocalTime.Second(at, Berlin));
        Assert.Equal("00:30:09 +02:00", LocalTime.SecondOfDay(at, Berlin));
        Assert.Equal("2026-05-03", LocalTime.Day(at, Berlin));
        Assert.Equal("2026-05-02 19:00 -03:30", LocalTime.Minute(at, TimeZoneInfo.CreateCustomTimeZone("test", TimeSpan.FromHours(-3.5), null, null)));
    }

    [Fact]
    public void The_hour_that_comes_twice_in_autumn_is_told_apart()
    {
        Assert.Equal("2026-10-25 02:30 +02:00", LocalTime.Minute(new DateTimeOffset(2026, 10, 25, 0, 30, 0, TimeSpan.Zero), Berlin));
        Assert.Equal("2026-10-25 02:30 +01:00", LocalTime.Minute(new DateTimeOffset(2026, 10, 25, 1, 30, 0, TimeSpan.Zero), Berlin));
    }

    [Fact]
    public void Whatever_the_offset_it_came_with_it_is_the_same_moment() =>
        Assert.Equal("2026-05-02 12:30 +00:00", LocalTime.Minute(new DateTimeOffset(2026, 5, 2, 14, 30, 0, TimeSpan.FromHours(2)), TimeZoneInfo.Utc));
}
