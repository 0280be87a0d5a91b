using ScaleLink.Measure;
using ScaleLink.Probing.Loading;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Daemon.Setup;

/// <summary>A device that was found, and what is known of it by now.</summary>
/// <param name="Finding">The port, and how it is read.</param>
/// <param name="Found">What it is.</param>
internal sealed record SetupDevice(PortFinding Finding, Found Found)
{
    /// <summary>Its own serial number where it has one, so that a cable that was moved changes nothing; otherwise where it is.</summary>
    public string Id { get; init; } = Found switch
    {
        FoundPadFrames { SerialNumber: { } serial } => serial,
        FoundSlave slave => $"{Finding.Link}#{slave.Slave}",
        _ => Finding.Link,
    };

    /// <summary>The corner it stands under; nothing: none yet.</summary>
    public Corner? Corner { get; init; }

    /// <summary>Where its load cells stand in what it says; empty until its pad was loaded. Pad frames hold nothing else.</summary>
    public IReadOnlyList<NumberPlace> Cells { get; init; } = [];

    /// <summary>It has been listened to for long enough to see somebody step on its pad.</summary>
    public bool IsReady { get; init; }

    /// <summary>Since when somebody stands on its pad; nothing: nobody does.</summary>
    public TimeSpan? LoadedSince { get; init; }

    /// <summary>The load on it came together with another: when it goes it says nothing.</summary>
    public bool IsSpoilt { get; init; }

    /// <summary>Why it is not heard; nothing: it is.</summary>
    public Diagnostic? Silence { get; init; }

    /// <summary>It says itself what its pad may carry.</summary>
    public bool KnowsCapacity => Found is FoundPadFrames { CapacityKg: not null };

    /// <summary>It can be written into a bay file: pad frames as they are, anything else once its cells are known.</summary>
    public bool CellsAreKnown => Found is FoundPadFrames || Cells.Count > 0;
}
