using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Clocks;

/// <summary>What the times of the entries after it are worth.</summary>
/// <param name="Trust">How far the clock can be believed from here on: <c>Synchronised</c>, <c>FreeRunning</c>, <c>Unset</c> or <c>Unknown</c>.</param>
/// <param name="StepSeconds">How far it was put forward (or back, negative) just before; 0: it was not.</param>
internal sealed record ClockRecord(string Trust, double StepSeconds)
{
    /// <summary>As it stands in the ledger.</summary>
    public static EntryKind<ClockRecord> Kind { get; } = new("clock");
}
