using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Pads;

/// <summary>What is wrong with one pad at present, beyond the imperfections that all pads have.</summary>
sealed class PadFaults
{
    /// <summary>The firmware hangs: the port is open, nothing is sampled or answered.</summary>
    public bool Frozen { get; set; }

    /// <summary>Samples go on, but the counts stay what they were.</summary>
    public bool FrozenValue { get; set; }

    /// <summary>Part of all bits that arrive wrong, 0 to 0.5.</summary>
    public double BitErrorRate { get; set; }

    /// <summary>Until this time the pad goes on, but its bytes are lost.</summary>
    public double SilentUntil { get; set; } = double.NegativeInfinity;

    /// <summary>Part of the samples that are lost, 0 to 1.</summary>
    public double DropShare { get; set; }

    /// <summary>Part of the samples that are sent twice, 0 to 1.</summary>
    public double DuplicateShare { get; set; }

    /// <summary>Part of the messages that break off in the middle, 0 to 1.</summary>
    public double TruncateShare { get; set; }

    /// <summary>Part of the messages with random bytes before them, 0 to 1.</summary>
    public double NoiseShare { get; set; }

    /// <summary>Part of a Modbus slave's answers that carry a wrong CRC, 0 to 1.</summary>
    public double WrongCheckShare { get; set; }

    /// <summary>The exception with which a Modbus slave refuses everything; 0: it does not.</summary>
    public byte Exception { get; set; }

    /// <summary>A second Modbus slave has the same address.</summary>
    public bool Twin { get; set; }

    /// <summary>And that one answers first, well before this one.</summary>
    public bool TwinFirst { get; set; }

    /// <summary>What the pad's self-test reports.</summary>
    public PadStatus Reported { get; set; }

    /// <summary>Names of what is wrong now, as the control channel calls them.</summary>
    public IEnumerable<string> Present(double now)
    {
        if (Frozen)
            yield return "freeze";
        if (FrozenValue)
            yield return "freeze-value";
        if (BitErrorRate > 0)
            yield return "garble";
        if (now < SilentUntil)
            yield return "silence";
        if (DropShare > 0)
            yield return "drop";
        if (DuplicateShare > 0)
            yield return "duplicate";
        if (TruncateShare > 0)
            yield return "truncate";
        if (NoiseShare > 0)
            yield return "noise";
        if (WrongCheckShare > 0)
            yield return "wrong-check";
        if (Exception != 0)
            yield return "exception";
        if (Twin)
            yield return "twin";
        if (Reported != PadStatus.None)
            yield return "self-test";
    }
}
