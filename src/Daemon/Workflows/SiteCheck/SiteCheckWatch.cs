using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>One watch while it goes on: takes a moment of each pad every second, and says when it is over and why.</summary>
internal sealed class SiteCheckWatch(SiteCheckRecord record, IReadOnlyList<PadTape> tapes, long startNs, double heavyKg)
{
    // Somebody who steps over a pad is gone by then; a car comes onto several at once.
    private const int LoadedSeconds = 20;
    private const int CarSeconds = 2;
    private const int CarPads = 3;
    private const int LostSeconds = 10;
    private const double BeforeCar = 3;

    private long _dueNs = startNs + Nanoseconds.PerSecond;

    public SiteCheckRecord Record => record;

    public double Seconds { get; private set; }

    public IReadOnlyList<PadTape> Tapes => tapes;

    /// <summary>Moments after this belong to whatever came onto the pads.</summary>
    public double EmptyUntilSeconds { get; private set; } = double.PositiveInfinity;

    /// <summary>Takes the seconds that are full at <paramref name="nowNs"/>; tells whether there was one.</summary>
    public bool Look(long nowNs)
    {
        if (nowNs < _dueNs)
            return false;
        Seconds = (nowNs - startNs) / (double)Nanoseconds.PerSecond;
        // Time that was left out, as by a sleeping machine, is not made up.
        _dueNs = nowNs + Nanoseconds.PerSecond;
        foreach (var tape in tapes)
            tape.Take(nowNs, Seconds, heavyKg);
        return true;
    }

    /// <summary>Whether it is over, and what to say of it.</summary>
    public (SiteCheckEnding Ending, Diagnostic? Why) Over()
    {
        if (tapes.Where(t => t.Missing >= LostSeconds).ToList() is { Count: > 0 } lost)
            return (SiteCheckEnding.PadLost, Early($"{Names(lost)} gave no load for {LostSeconds} s.", "Repair it (scalelink pads names the fault), zero, and watch again."));
        var loaded = tapes.Where(t => t.Loaded > 0).ToList();
        if (loaded.Any(t => t.Loaded >= LoadedSeconds) || loaded.Count(t => t.Loaded >= CarSeconds) >= CarPads)
        {
            EmptyUntilSeconds = Seconds - loaded.Max(t => t.Loaded) - BeforeCar;
            return (SiteCheckEnding.Loaded, Early($"{Names(loaded)} carried a load.", "What was seen before it is kept. Take the car off, zero, and watch again, as long as was meant."));
        }

        return Seconds >= 60 * record.Minutes ? (SiteCheckEnding.Whole, null) : (SiteCheckEnding.None, null);
    }

    /// <summary>The finding of an end before its time.</summary>
    public Diagnostic Early(string why, string remedy) => Early(record, Seconds, why, remedy);

    /// <inheritdoc cref="Early(string, string)"/>
    public static Diagnostic Early(SiteCheckRecord record, double? seconds, string why, string remedy) => new(SiteCheckCodes.EndedEarly,
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"The watch of {record.Minutes:0.#} minutes ended {(seconds is { } s ? $"after {Math.Floor(s / 60):0}:{Math.Floor(s % 60):00}" : "early")}: {why}"), remedy);

    private static string Names(IEnumerable<PadTape> tapes) => string.Join(", ", tapes.Select(t => t.Corner));
}
