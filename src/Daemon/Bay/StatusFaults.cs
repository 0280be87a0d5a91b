using System.Numerics;
using ScaleLink.Daemon.Links;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Daemon.Bay;

/// <summary>Turns the status word of a sample into faults, and says whether the sample may be weighed.</summary>
internal static class StatusFaults
{
    private const PadStatus Spoils = PadStatus.AnyCellAtLimit | PadStatus.ExcitationLow | PadStatus.ConverterFault;

    /// <summary>A sample from a clipped or faulty converter is no load.</summary>
    public static bool CanWeigh(PadStatus status) => (status & Spoils) == 0;

    /// <summary>Numbers of the cells whose converter is at its limit, from 1.</summary>
    public static IReadOnlyList<int> CellsAtLimit(PadStatus status) =>
        (status & PadStatus.AnyCellAtLimit) == 0 ? [] : [.. Enumerable.Range(1, CellCounts.MaxCells).Where(cell => status.HasFlag((PadStatus)((int)PadStatus.Cell0AtLimit << (cell - 1))))];

    /// <summary>Tells of cells whose numbers stand still, or that none does any more.</summary>
    /// <param name="still">Bit 0: the first cell.</param>
    /// <param name="cells">How many the pad has.</param>
    /// <param name="faults">Of the pad.</param>
    /// <param name="nowNs">Since when.</param>
    public static void ApplyStill(int still, int cells, FaultSet faults, long nowNs)
    {
        // Another cell may stand still by now than when the fault was raised.
        faults.Clear(PadCodes.ValueStandsStill);
        var which = cells == 1 || still == (1 << cells) - 1 ? "Its number stands" : $"The number of cell {BitOperations.TrailingZeroCount(still) + 1} stands";
        faults.Set(still != 0, PadCodes.ValueStandsStill, $"{which} still while samples go on: no load is given.",
            "Restart the pad; check the wire between cell, converter and board. An indicator that holds its display has to be released.", nowNs);
    }

    /// <summary>Updates <paramref name="faults"/>; true when something began or ended.</summary>
    public static bool Apply(PadStatus status, FaultSet faults, long nowNs)
    {
        var limited = status & PadStatus.AnyCellAtLimit;
        var changed = faults.Set(limited != 0, PadCodes.ConverterAtLimit, $"The converter of cell {BitOperations.TrailingZeroCount((int)limited) + 1} is at its limit.",
            "Take load off the pad; with the pad empty, check that cell and its cable.", nowNs);
        changed |= faults.Set(status.HasFlag(PadStatus.ConverterFault), PadCodes.ConverterFault, "The pad reports a converter fault.", "Check the cell cables; restart the pad.", nowNs);
        changed |= faults.Set(status.HasFlag(PadStatus.ExcitationLow), PadCodes.ExcitationLow, "The excitation of the cells is low.", "Check the pad's supply and hub; charge or replace its battery.", nowNs);
        changed |= faults.Set(status.HasFlag(PadStatus.TiltFault), PadCodes.TiltSensorFailed, "The tilt sensor has failed.", "Check the sensor; loads go on without tilt correction.", nowNs);
        return changed;
    }
}
