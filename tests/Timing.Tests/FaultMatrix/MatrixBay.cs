using System.Diagnostics;
using Shared.Rig;
using ScaleLink.Api.V1;

namespace Timing.Tests.FaultMatrix;

/// <summary>
/// A settled car on one bay that all rows share: LF speaks pad frames, RF and RR are slaves on one bus, LR prints text. Everything that is
/// published meanwhile is kept and held against the truth.
/// </summary>
public sealed class MatrixBay : IDisposable
{
    // Exact to the rounding of counts and text; the tilt correction of a level pad is nothing.
    private const double SampleToleranceKg = 0.02;
    private const double ReadingToleranceKg = 0.05;

    private readonly BayRig _rig = new(speak: "LF=pad-frames,RF=modbus,LR=text,RR=modbus", replyMs: PadBlocks.RecordedReplyMs);
    private readonly double[] _truth;

    public MatrixBay()
    {
        _rig.PutCarOn();
        _rig.Settled();
        _truth = _rig.Simulator.TrueLoads();
        (Samples, Loads) = (new SamplesWatch(_rig.Daemon), new LoadsWatch(_rig.Daemon));
        Wait.Until(() => Samples.Of(Corner.Rr).Count > 0 && Loads.Newest is not null, Wait.Patience, "the feeds run");
    }

    internal SamplesWatch Samples { get; }

    internal LoadsWatch Loads { get; }

    internal void Do(IEnumerable<string> commands)
    {
        foreach (var command in commands)
            _rig.Simulator.Do(command);
    }

    internal Pad Pad(Corner corner) => _rig.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.Single(p => p.Corner == corner);

    /// <summary>Time until a pad is named by one of the codes.</summary>
    internal TimeSpan UntilNamed(Corner corner, string[] codes, TimeSpan within) =>
        Wait.Until(() => Pad(corner).Faults.Any(f => codes.Contains(f.Code)), within, () => $"{corner} named by {string.Join(" or ", codes)}; {Pad(corner)}");

    /// <summary>All pads live and without fault, and all four loads in a reading made after that.</summary>
    internal TimeSpan UntilHealthy(TimeSpan within)
    {
        var healed = Wait.Until(
            () => _rig.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.All(p => p.State == PadState.Live && p.Faults.Count == 0), within,
            () => $"all pads healthy; {string.Join("\n", _rig.Daemon.Pads.ListPads(new ListPadsRequest()).Pads)}");
        Loads.Until(Stopwatch.GetTimestamp(), l => l.Corners.All(c => c.LoadKg is not null), within, "all four loads again");
        return healed;
    }

    /// <summary>Whatever has been published as a load is the load.</summary>
    internal void AssertNothingWrong()
    {
        foreach (var corner in new[] { Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr })
            Assert.All(Samples.Of(corner).Where(s => s.LoadKg is not null), s => Assert.Equal(Truth(corner), s.LoadKg!.Value, SampleToleranceKg));
        foreach (var (_, loads) in Loads.Received)
            Assert.All(loads.Corners.Where(c => c.LoadKg is not null), c => Assert.Equal(Truth(c.Corner), c.LoadKg.Estimate, ReadingToleranceKg));
    }

    internal Loads Settled() => _rig.Settled();

    public void Dispose()
    {
        Samples.Dispose();
        Loads.Dispose();
        _rig.Dispose();
    }

    private double Truth(Corner corner) => _truth[(int)corner - 1];
}
