using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.Freezing;

namespace ScaleLink.Daemon.Bay;

/// <summary>Looks for the one pad under a car whose number stands still while all others move.</summary>
internal sealed class PadsAbreast(IReadOnlyList<PadChannel> pads)
{
    private readonly SiblingWatch _siblings = new(pads.Count);

    /// <summary>Looks now: the car stands on all of them.</summary>
    /// <param name="ns">The instant, on the daemon's clock.</param>
    public void Look(long ns)
    {
        if (_siblings.Look(ns / (double)Nanoseconds.PerSecond, [.. pads.Select(p => p.Whole)]) is { } still)
            pads[still].StandsStill();
    }

    /// <summary>The car does not stand on all of them.</summary>
    public void Interrupt() => _siblings.Interrupt();
}
