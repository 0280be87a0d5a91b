namespace ScaleLink.Weighing.Pads;

/// <summary>Whether a reading can be used at all, whatever it is for.</summary>
static class ReadingCheck
{
    /// <summary>Everything that speaks against the reading; empty when it is good.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="cells">Cells the pad has.</param>
    /// <param name="limits">What to keep to.</param>
    /// <param name="first">The first reading of the same work, for the temperature; null for none.</param>
    /// <param name="previous">The reading before, under another load, for cells that stay still; null for none.</param>
    public static IReadOnlyList<Diagnostic> Of(
        PadReading reading, int cells, ReadingLimits limits, PadReading? first = null, PadReading? previous = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(limits);
        if (reading.CellCounts.Count != cells || reading.CellSpreads.Count != cells)
            return [CalibrationCodes.ReadingOfOtherPad.Because($"{reading.CellCounts.Count} cells read, {cells} expected")];

        if (reading.CellCounts.Index().Where(cell => !double.IsFinite(cell.Item)).Select(cell => cell.Index + 1).ToList() is { Count: > 0 } silent)
            return [CalibrationCodes.CellFrozen.Because($"cell {string.Join(", ", silent)} gives no number")];

        List<Diagnostic> refusals = [];
        if (reading.SaturatedCells.Count > 0)
            refusals.Add(CalibrationCodes.CellSaturated.Because($"cell {string.Join(", ", reading.SaturatedCells)}"));
        if (!reading.Settled)
            refusals.Add(CalibrationCodes.Unsettled.Because("the load still moves"));
        if (previous is not null && Frozen(reading, previous) is { Count: > 0 } frozen)
            refusals.Add(CalibrationCodes.CellFrozen.Because($"cell {string.Join(", ", frozen)} repeats its last reading to the count"));
        if (Math.Max(Math.Abs(reading.PitchDeg ?? 0), Math.Abs(reading.RollDeg ?? 0)) is var tilt && tilt > limits.TiltDeg)
            refusals.Add(CalibrationCodes.PadTilted.Because($"{tilt:0.0}°, {limits.TiltDeg:0.0}° allowed"));
        if (Math.Abs((reading.TemperatureC - first?.TemperatureC) ?? 0) is var change && change > limits.TemperatureChangeK)
            refusals.Add(CalibrationCodes.TemperatureMoved.Because($"{change:0.0} K since the first reading, {limits.TemperatureChangeK:0.0} K allowed"));
        return refusals;
    }

    // A live cell varies: the same mean to the last digit and no spread, under another load, is no coincidence.
    static List<int> Frozen(PadReading reading, PadReading previous) =>
    [
        .. Enumerable.Range(0, Math.Min(reading.CellCounts.Count, previous.CellCounts.Count))
            .Where(i => reading.CellSpreads[i] == 0 && reading.CellCounts[i] == previous.CellCounts[i])
            .Select(i => i + 1),
    ];
}
