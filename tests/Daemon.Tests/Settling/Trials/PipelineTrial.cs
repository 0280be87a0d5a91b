using CarOnPads.Bench;
using CarOnPads.Cells;
using CarOnPads.Physics;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Measure;

namespace Daemon.Tests.Settling.Trials;

/// <summary>
/// One record: a car stands quietly, somebody works on it and turns its perches for four seconds, lets go at t = 0, and it rocks to rest.
/// What the pipeline says, and the one-second average of the same blocks, against where the simulator says that the car comes to rest.
/// </summary>
internal sealed class PipelineTrial
{
    private const double QuietSeconds = 8, WorkSeconds = 4, RockSeconds = 20;
    // Hands come and go at 600 N/s: nothing may touch the car any more at t = 0.
    private const double LeanLetsGo = 0.3;
    private const int BlocksPerSecond = 20;
    private readonly WeighedBlock[] _blocks;
    private readonly Corners[] _averages;
    private readonly double[] _ratioAverages;

    private PipelineTrial(WeighedBlock[] blocks, double released, Corners truth)
    {
        (_blocks, Truth) = (blocks, truth);
        Times = [.. blocks.Select(b => b.Seconds - released)];
        _averages = [.. Enumerable.Range(0, blocks.Length).Select(k => Average(k))];
        _ratioAverages = [.. Enumerable.Range(0, blocks.Length).Select(RatioAverage)];
    }

    /// <summary>When each block came out, s after the release.</summary>
    public double[] Times { get; }

    /// <summary>Where the car comes to rest, kg.</summary>
    public Corners Truth { get; }

    /// <summary>The record of that number in the series that <paramref name="seed"/> names.</summary>
    public static PipelineTrial Run(RockingKind kind, int seed, int number, double hertz = 80)
    {
        var random = new Random(seed * 100_003 + number);
        var car = RockingCars.Draw(random, kind);
        using var virtualBay = new VirtualBay(Options(car, kind, random.Next()) with { Hertz = hertz }, Known(car));
        var bay = virtualBay.Bay;
        bay.Rig.Bars(front: false, rear: false);
        virtualBay.Run(QuietSeconds);
        WorkSessions(bay.Rig, kind, random);
        virtualBay.Run(WorkSeconds);
        if (kind.Thrown)
            bay.Rig.Nudge((ref Motion motion) => Throw(ref motion, random));
        var (released, truth) = (bay.Time, FromFour(bay.TrueLoads()));
        if (kind.WalkedPast)
            Passers.Walk(bay, random, released, released + RockSeconds);
        virtualBay.Run(RockSeconds);
        return new PipelineTrial([.. virtualBay.Blocks.Where(b => b.Loads is not null)], released, truth);
    }

    /// <summary>Seconds from a hand on a settled car until "settled" is taken back; nothing when it was not settled.</summary>
    public static double? Lean(RockingKind kind, int seed, int number)
    {
        var random = new Random(seed * 100_003 + number);
        var car = RockingCars.Draw(random, kind);
        using var virtualBay = new VirtualBay(Options(car, kind, random.Next()), Known(car));
        virtualBay.Run(QuietSeconds);
        if (virtualBay.Newest?.Verdict != BayVerdict.Settled)
            return null;
        var touched = virtualBay.Bay.Time;
        var kg = Math.Exp(Math.Log(2) + random.NextDouble() * Math.Log(15));
        virtualBay.Bay.Rig.Lean((Wheel)random.Next(4), kg * virtualBay.Bay.Options.Gravity, touched + 3);
        virtualBay.Run(3);
        return virtualBay.Blocks.FirstOrDefault(b => b.Seconds > touched && b.Reading.Verdict != BayVerdict.Settled) is { Reading: not null } lost
            ? lost.Seconds - touched
            : 3;
    }

    /// <summary>Largest error of the published loads on any pad, kg.</summary>
    public double Error(int k) => Worst(Corners.From(c => _blocks[k].Reading.Corners[(int)c].LoadKg?.Estimate ?? double.PositiveInfinity));

    /// <summary>Largest error of the one-second average on any pad, kg.</summary>
    public double AverageError(int k) => Worst(_averages[k]);

    /// <summary>Error of the published cross weight, percent.</summary>
    public double CrossWeightError(int k) =>
        _blocks[k].Reading.CrossWeightPercent is { } x ? Math.Abs(x.Estimate - Ratio(Truth)) : double.PositiveInfinity;

    /// <summary>Error of the one-second average of the ratio, percent.</summary>
    public double RatioAverageError(int k) => Math.Abs(_ratioAverages[k] - Ratio(Truth));

    /// <summary>First time after the release from which the error stays within the band for so long or to the end of the record, s; the end when it never does.</summary>
    public double TimeWithin(Func<int, double> error, double band, double holdSeconds = RockSeconds)
    {
        int? since = null;
        for (var k = 0; k < Times.Length; k++)
        {
            if (Times[k] <= 0)
                continue;
            since = error(k) <= band ? since ?? k : null;
            if (since is { } start && Times[k] - Times[start] >= holdSeconds)
                break;
        }

        return since is { } first ? Times[first] : RockSeconds;
    }

    /// <summary>Blocks at which the car was newly called settled after the release.</summary>
    public IEnumerable<int> Claims() => Enumerable.Range(1, Times.Length - 1).Where(k => Times[k] > 0
        && _blocks[k].Reading.Verdict == BayVerdict.Settled && _blocks[k - 1].Reading.Verdict != BayVerdict.Settled);

    /// <summary>Whether anything was claimed between two ages, s.</summary>
    public bool ClaimsWithin(double from, double to) =>
        Enumerable.Range(0, Times.Length).Any(k => Times[k] >= from && Times[k] < to && _blocks[k].Reading.Corners[0].LoadKg?.StandardUncertainty is not null);

    /// <summary>Pads whose truth lies within twice the stated uncertainty, and pads stated, between two ages, s.</summary>
    public (int Covered, int Stated) Covered(double from, double to)
    {
        var stated = Enumerable.Range(0, Times.Length).Where(k => Times[k] >= from && Times[k] < to)
            .SelectMany(k => _blocks[k].Reading.Corners)
            .Where(c => c.LoadKg?.StandardUncertainty is not null).ToArray();
        return (stated.Count(c => Math.Abs(c.LoadKg!.Value.Estimate - Truth[c.Corner]) <= 2 * c.LoadKg.Value.StandardUncertainty), stated.Length);
    }

    /// <summary>The same for cross weight.</summary>
    public (int Covered, int Stated) CrossWeightCovered(double from, double to)
    {
        var stated = Enumerable.Range(0, Times.Length).Where(k => Times[k] >= from && Times[k] < to)
            .Select(k => _blocks[k].Reading.CrossWeightPercent).OfType<Value>().Where(x => x.StandardUncertainty is not null).ToArray();
        return (stated.Count(x => Math.Abs(x.Estimate - Ratio(Truth)) <= 2 * x.StandardUncertainty), stated.Length);
    }

    private static BayOptions Options(CarDescription car, RockingKind kind, int seed) =>
        new() { Car = car, Seed = seed, Hertz = 80, Imperfections = Imperfections.Parse(kind.Imperfections) };

    private static CarConfiguration Known(CarDescription car) =>
        new(car.Front.TrackM * 1000, car.Rear.TrackM * 1000, RockingCars.RideRate(car.Front), RockingCars.RideRate(car.Rear), RateUncertaintyPercent: 5);

    private static void WorkSessions(Rig rig, RockingKind kind, Random random)
    {
        var turns = random.NextDouble() - .5;
        for (var i = 0; i < 4; i++)
            rig.Turn((Wheel)i, (i is 0 or 3 ? turns : -turns) + .03 * (random.NextDouble() - .5));
        if (kind.Thrown)
            return;
        // One person at one end of the body, 150 to 450 N: every 0.15 s another level between -0.4 and 1.6 times that, linear between.
        var strength = 150 + 300 * random.NextDouble();
        double forward = random.Next(2), left = random.NextDouble();
        var place = Four.Of(forward * left, forward * (1 - left), (1 - forward) * left, (1 - forward) * (1 - left));
        rig.Bounce(place, 2 * strength, WorkSeconds);
        for (var i = 0; i < 4; i++)
            rig.Lean((Wheel)i, -.4 * strength * place[(Wheel)i], rig.Time + WorkSeconds - LeanLetsGo);
    }

    private static void Throw(ref Motion motion, Random random)
    {
        int Sign() => random.Next(2) * 2 - 1;
        motion.Heave += .008 * Sign();
        motion.Pitch += .004 * Sign();
        motion.Roll += .004 * Sign();
    }

    private static Corners FromFour(Four four) => Corners.From(c => four[(Wheel)(int)c]);

    private static double Ratio(Corners loads) => 100 * (loads.RF + loads.LR) / loads.Sum;

    private double Worst(Corners loads)
    {
        var off = loads - Truth;
        return Math.Max(Math.Max(Math.Abs(off.LF), Math.Abs(off.RF)), Math.Max(Math.Abs(off.LR), Math.Abs(off.RR)));
    }

    private Corners Average(int k)
    {
        var from = Math.Max(0, k - BlocksPerSecond + 1);
        var sum = default(Corners);
        for (var i = from; i <= k; i++)
            sum += _blocks[i].Loads!.Value;
        return 1.0 / (k - from + 1) * sum;
    }

    private double RatioAverage(int k) => _blocks.Skip(Math.Max(0, k - BlocksPerSecond + 1)).Take(Math.Min(k + 1, BlocksPerSecond)).Average(b => Ratio(b.Loads!.Value));
}
