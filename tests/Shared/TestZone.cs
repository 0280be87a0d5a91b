using System.Runtime.CompilerServices;

namespace Shared;

/// <summary>
/// Tests and the programs that they start are in one zone, whatever machine they run on, and not in UTC: a time that somebody has forgotten to convert would
/// look right there.
/// </summary>
internal static class TestZone
{
    /// <summary>Half an hour beside the whole ones, the same all year (IANA time zone database).</summary>
    public const string Name = "Asia/Kolkata";

    [ModuleInitializer]
    internal static void Set()
    {
        Environment.SetEnvironmentVariable("TZ", Name);
        TimeZoneInfo.ClearCachedData();
    }
}
