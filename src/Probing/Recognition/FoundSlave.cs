using System.Globalization;

namespace ScaleLink.Probing.Recognition;

/// <summary>A Modbus slave that has answered.</summary>
/// <param name="Slave">Its address, 1 to 247.</param>
/// <param name="Tables">What its tables of registers gave.</param>
/// <param name="ReplyWithin">The longest that it took from a question for one register to the whole reply.</param>
internal sealed record FoundSlave(byte Slave, IReadOnlyList<FoundRegisters> Tables, TimeSpan ReplyWithin) : Found
{
    public override string Protocol => "modbus-rtu";

    public override string Summary => $"slave {Slave.ToString(CultureInfo.InvariantCulture)} answers";

    /// <summary>The table to begin with: one in which something moves, or one that can be read, or nothing.</summary>
    public FoundRegisters? Readable => Tables.FirstOrDefault(t => t.Numbers.Count > 0) ?? Tables.FirstOrDefault(t => t.Count > 0);

    /// <summary>A second device answers under the same address.</summary>
    public bool HasTwin { get; init; }

    public override IReadOnlyList<string> Remarks =>
    [
        .. HasTwin ? new[] { $"Something more was heard behind the answer of slave {Slave.ToString(CultureInfo.InvariantCulture)}: perhaps a second device of this address. Take one of them off, give it another address, and probe again." } : [],
        .. Tables is [{ } one, { } other] && one.IsAs(other) ? new[] { "Both tables hold the same." } : [],
        Readable switch
        {
            null => "No register could be read at the places that were tried: which ones there are stands in the device's manual.",
            { Numbers.Count: 0 } => "No register moved while it was looked at, so which holds the load is not known: it stands in the device's manual.",
            { Numbers: { } numbers } => $"Registers that move as a measurement does: {string.Join(", ", numbers.Select(n => string.Create(CultureInfo.InvariantCulture, $"{n.At} as {n.Type}{(n.IsLowFirst ? " low-first" : "")}")))}. Whether they hold the load, and of what type, stands in the device's manual.",
        },
        "The pad gives no load until its first calibration procedure has found its sensitivity (docs/calibration.md).",
    ];
}
