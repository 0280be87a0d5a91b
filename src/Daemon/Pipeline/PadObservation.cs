using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Pipeline;

/// <summary>The last seconds of one pad, cell by cell, as a proof or a zero needs them.</summary>
/// <param name="Identity">The pad they belong to.</param>
/// <param name="Reading">Means and spreads; settled only when <paramref name="Rest"/> says so.</param>
/// <param name="Rest">How far the load has come to rest.</param>
public sealed record PadObservation(PadIdentity Identity, PadReading Reading, RestVerdict Rest)
{
    /// <summary>Describes a window of samples.</summary>
    /// <param name="identity">The pad.</param>
    /// <param name="samples">Counts of the cells, oldest first; at least one.</param>
    /// <param name="isWhole">Whether the samples fill the window without a hole.</param>
    /// <param name="kgPerCount">For judging rest.</param>
    /// <param name="around">Everything of the reading that is not counts.</param>
    internal static PadObservation Of(PadIdentity identity, ReadOnlySpan<CellCounts> samples, bool isWhole, double kgPerCount, PadReading around)
    {
        var cells = identity.Cells;
        double[] means = new double[cells], spreads = new double[cells];
        for (var cell = 0; cell < cells; cell++)
            (means[cell], spreads[cell]) = Describe(samples, cell);
        var loads = new double[samples.Length];
        for (var i = 0; i < loads.Length; i++)
            for (var cell = 0; cell < cells; cell++)
                loads[i] += (samples[i][cell] - means[cell]) * kgPerCount;
        var rest = PadRest.Judge(loads);
        rest = isWhole ? rest : rest with { Progress = Math.Min(rest.Progress, 0.9), Settled = false };
        return new PadObservation(identity, around with { CellCounts = means, CellSpreads = spreads, Settled = rest.Settled }, rest);
    }

    private static (double Mean, double Spread) Describe(ReadOnlySpan<CellCounts> samples, int cell)
    {
        var (sum, least, most) = (0.0, int.MaxValue, int.MinValue);
        foreach (ref readonly var sample in samples)
        {
            sum += sample[cell];
            (least, most) = (Math.Min(least, sample[cell]), Math.Max(most, sample[cell]));
        }

        return (sum / samples.Length, (double)most - least);
    }
}
