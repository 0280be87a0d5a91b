using ScaleLink.Weighing.SiteCheck;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>How a watch ended.</summary>
internal enum SiteCheckEnding
{
    /// <summary>It has not.</summary>
    None,
    /// <summary>After the time that was asked for.</summary>
    Whole,
    /// <summary>Somebody ended it.</summary>
    Stopped,
    /// <summary>Something heavy stood on the pads.</summary>
    Loaded,
    /// <summary>A pad fell out.</summary>
    PadLost,
    /// <summary>The daemon was ended.</summary>
    Restarted,
}

/// <summary>One watch over empty pads, as the ledger keeps it.</summary>
/// <param name="StartedAt">UTC.</param>
/// <param name="Who">Who began it.</param>
/// <param name="Minutes">Asked for.</param>
/// <param name="TotalKg">Of the car that is expected, kg.</param>
/// <param name="TotalIsGuessed">True when nobody stated it and no car was weighed before.</param>
internal sealed record SiteCheckRecord(DateTimeOffset StartedAt, string Who, double Minutes, double TotalKg, bool TotalIsGuessed)
{
    /// <summary>How it ended.</summary>
    public SiteCheckEnding Ending { get; init; }

    /// <summary>When, UTC.</summary>
    public DateTimeOffset? EndedAt { get; init; }

    /// <summary>What was found; null while it goes on, and when too little was seen.</summary>
    public SiteCheckReport? Report { get; init; }

    /// <summary>Why there is no report, or not the whole one.</summary>
    public Diagnostic? Why { get; init; }
}
