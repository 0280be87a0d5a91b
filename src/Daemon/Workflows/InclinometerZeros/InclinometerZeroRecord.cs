using ScaleLink.Daemon.Bay;
using ScaleLink.Measure;
using ScaleLink.Weighing.InclinometerZeros;

namespace ScaleLink.Daemon.Workflows.InclinometerZeros;

/// <summary>Everything that is known of one pad's inclinometer after a step, as it stands in the ledger.</summary>
internal sealed record InclinometerZeroRecord
{
    /// <summary>The bay in which the step was made.</summary>
    public string Bay { get; init; } = "";

    /// <summary>The tested zero in effect; absent when there is none.</summary>
    public SavedInclinometerZero? Zero { get; init; }

    /// <summary>The test that goes on; absent when none does.</summary>
    public OpenInclinometerTest? Test { get; init; }
}

/// <summary>A test that goes on.</summary>
/// <param name="Test">Its readings.</param>
/// <param name="Corner">Where the pad lay.</param>
/// <param name="Source">Where its angles came from, as in <see cref="SavedInclinometerZero"/>.</param>
internal sealed record OpenInclinometerTest(InclinometerTest Test, string Corner, string Source)
{
    /// <summary>After a longer pause the marks are worn and the sensor has drifted. Common practice, no published source.</summary>
    public static readonly TimeSpan LongestPause = TimeSpan.FromMinutes(30);

    /// <summary>Why it cannot go on; nothing when it can.</summary>
    public string? CutShort(string corner, string source, DateTimeOffset now)
    {
        var last = Test.Readings[^1].At;
        if (corner != Corner)
            return $"The test was begun at {Corner} and is over: the pad is at {corner} now.";
        if (source != Source)
            return "The test is over: the angles come from another inclinometer now.";
        return now - last > LongestPause ? $"The test that was last read {LocalTime.Minute(last)} was cut short: after {LongestPause.TotalMinutes:0} minutes it is begun anew." : null;
    }
}
