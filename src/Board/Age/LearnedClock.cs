using System.Globalization;
using ScaleLink.Api.V1;

namespace ScaleLink.Board.Age;

/// <summary>The daemon's clock as learned before this code ran, so that the first value need not wait for a question.</summary>
/// <param name="Answer">What the daemon said.</param>
/// <param name="Since">Time since it was asked.</param>
internal sealed record LearnedClock(GetClockResponse Answer, TimeSpan Since)
{
    /// <summary>Reads "run clock-in-ns ms-since-asked"; nothing when it is not that.</summary>
    public static LearnedClock? Read(string? told) =>
        told?.Split(' ') is [{ Length: > 0 } run, var ns, var ms]
        && long.TryParse(ns, NumberStyles.None, CultureInfo.InvariantCulture, out var clock)
        && double.TryParse(ms, NumberStyles.Float, CultureInfo.InvariantCulture, out var since) && since is >= 0 and < 60_000
            ? new LearnedClock(new GetClockResponse { StartId = run, MonotonicNs = clock }, TimeSpan.FromMilliseconds(since))
            : null;
}
