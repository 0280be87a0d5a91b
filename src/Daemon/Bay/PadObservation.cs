using ScaleLink.Daemon.Links;
using ScaleLink.Weighing.Pads;

namespace ScaleLink.Daemon.Bay;

/// <summary>The last seconds of one pad, cell by cell, as a calibration procedure or a zero needs them.</summary>
/// <param name="Identity">The pad they belong to.</param>
/// <param name="Reading">Means and spreads; settled only when <paramref name="Rest"/> says so.</param>
/// <param name="Rest">How far the load has come to rest.</param>
internal sealed record PadObservation(PadIdentity Identity, PadReading Reading, RestVerdict Rest)
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
        var rest = Judge(samples, means, kgPerCount);
        rest = isWhole ? rest : rest with { Progress = Math.Min(rest.Progress, 0.9), Settled = false };
        return new PadObservation(identity, around with { CellCounts = means, CellSpreads = spreads, Settled = rest.Settled }, rest);
    }

    // A mass that is slid from one cell to another leaves the sum alone, and the mean of before and after belongs to no place
    // at all: each cell has to rest as well.
    private static RestVerdict Judge(ReadOnlySpan<CellCounts> samples, double[] means, double kgPerCount)
    {
        double[] sum = new double[samples.Length], own = new double[samples.Length];
        var (progress, settled) = (1.0, true);
        for (var cell = 0; cell < means.Length; cell++)
        {
            for (var i = 0; i < own.Length; i++)
            {
                own[i] = (samples[i][cell] - means[cell]) * kgPerCount;
                sum[i] += own[i];
            }

            var rest = PadRest.Judge(own);
            (progress, settled) = (Math.Min(progress, rest.Progress), settled && rest.Settled);
        }

        var whole = PadRest.Judge(sum);
        return whole with { Progress = Math.Min(progress, whole.Progress), Settled = settled && whole.Settled };
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
