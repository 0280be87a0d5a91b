using CarOnPads.Bench;
using CarOnPads.Physics;
using Daemon.Tests.Settling.Trials;
using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Calibration;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.PadInterchange;
using ScaleLink.Daemon.Workflows.SiteCheck;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Daemon.Workflows.Zeros;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Procedure;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;
using Shared;

namespace Daemon.Tests.Workflows.Calibration;

/// <summary>The simulated bench, the daemon's pads from bytes to loads, a real ledger and the bench where pads are calibrated, in virtual time.</summary>
internal sealed class CalibrationBay : IDisposable
{
    private const double Beat = 0.004;
    // The weighing loop wakes this often.
    private const double WeighingBeat = 0.01;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-calibration-");
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));
    private readonly Cable[] _cables = [new(), new(), new(), new()];
    private readonly Func<Corner, double?> _kgPerCount;
    private readonly bool _hasSensitivity;
    private readonly LedgerDatabase _ledger;
    private readonly CarOnPads.Bench.Bay _bay;
    private readonly ZeroTaking _zeros;
    private readonly LiveBay _live;
    private readonly BayClock _clock;
    private readonly BlockClock _blocks;
    private readonly BayWeigher? _weigher;
    private double _nextWeighing;
    private SiteCheckDesk? _siteCheck;

    /// <param name="options">The simulated bench.</param>
    /// <param name="weighs">Makes readings of the four loads as well, which a calibration procedure does without.</param>
    /// <param name="kgPerCount">Of the bay file; nominal where it says nothing.</param>
    /// <param name="hasSensitivity">False: the bay file says nothing of it, and nothing is nominal.</param>
    public CalibrationBay(BayOptions options, bool weighs = false, Func<Corner, double?>? kgPerCount = null, bool hasSensitivity = true)
    {
        _hasSensitivity = hasSensitivity;
        _kgPerCount = kgPerCount ?? (_ => null);
        _ledger = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));
        _bay = new CarOnPads.Bench.Bay(options, wheel => _cables[(int)wheel]);
        var clock = _clock = new BayClock(_time);
        var (zeros, calibrations) = (new ZeroLedger(_ledger), new CalibrationLedger(_ledger));
        var records = Records = new PadRecords(zeros, calibrations, Here);
        Pads = [.. Enum.GetValues<Corner>().Select(corner => new PadChannel(PadAt(corner), clock, records))];
        for (var i = 0; i < 4; i++)
            _cables[i].Connect(Pads[i], clock);
        _zeros = new ZeroTaking(clock, zeros);
        _live = new LiveBay(Pads);
        Desk = new ProcedureDesk(_live, new ProcedureLedger(_ledger), calibrations, clock);
        _blocks = new BlockClock(Pads, clock);
        _weigher = weighs
            ? new BayWeigher(Pads, new WeighConfiguration(SettledToleranceKg: 0.1, RaisedBelowKg: 5), new RockingPrior(CarRocking.DirectionOf(null)), reading => reading)
            : null;
    }

    public static Place Here { get; } = new("trial", 9.81, 1e-6);

    public IReadOnlyList<PadChannel> Pads { get; }

    public ProcedureDesk Desk { get; }

    /// <summary>What is on record of the pads.</summary>
    public PadRecords Records { get; }

    /// <summary>Where pads are calibrated, made anew from the ledger as after a restart.</summary>
    public ProcedureDesk TakeUpDesk() => new(_live, new ProcedureLedger(_ledger), new CalibrationLedger(_ledger), _clock);

    /// <summary>Every calibration that is or was in effect.</summary>
    public CalibrationShelf Shelf => new(_live, new CalibrationLedger(_ledger));

    /// <summary>A pad of the bay file after a restart, before anything has come from it.</summary>
    public PadChannel Away(Corner corner) => new(PadAt(corner), _clock, Records);

    /// <summary>Takes a zero of one pad as it stands; gives why not.</summary>
    public ScaleLink.Measure.Diagnostics.Diagnostic? TryZero(PadChannel pad, string because = "") => _zeros.Take(pad, "crew", because).Refused;

    /// <summary>Car, crew and pads.</summary>
    public CarOnPads.Bench.Bay Bench => _bay;

    /// <summary>Ready for the record, as every face is told.</summary>
    public bool IsWeighingReady => _live.Newest?.WeighingReady == true;

    /// <summary>What every face is told.</summary>
    public BayReading? Newest => _live.Newest;

    /// <summary>The present reading as a work session would put it on record.</summary>
    public RecordedWeighing Record() => new ReadingTaker(_live, _clock).Take();

    /// <summary>Where pads are interchanged, made anew from the ledger as after a restart.</summary>
    public InterchangeDesk TakeUpInterchange() => new(
        new PlacementTaker(_live, new ReadingTaker(_live, _clock), _clock), new InterchangeLedger(_ledger, "trial"), _clock);

    /// <summary>Where the empty pads are watched, made anew from the ledger as after a restart.</summary>
    /// <param name="prepare">Height measurements the patch and chooses a car.</param>
    public SiteCheckDesk TakeUpSiteCheck(Action<PatchDesk, CarShelf>? prepare = null)
    {
        var bay = BayFile.Parse("bay = \"trial\"", "bay.toml").Configuration!;
        var (patch, cars) = (new PatchDesk(_ledger, bay, _time), new CarShelf(_ledger, bay, _time));
        prepare?.Invoke(patch, cars);
        return _siteCheck = new SiteCheckDesk(_live, patch, new StandingCar(cars), bay, new SiteCheckLedger(_ledger, bay.Bay), _clock);
    }

    /// <summary>What looks after the zero of one pad.</summary>
    public PadZeroWatch Watch(PadChannel pad) => new(pad, new ZeroTrackingOptions(), raisedBelowKg: 5, new ZeroLedger(_ledger), _clock);

    /// <summary>Puts a mass on every pad and lets it come to rest.</summary>
    public void Put(double kg, double x = 0, double y = 0, Func<double>? misplaced = null)
    {
        foreach (var wheel in Enum.GetValues<Wheel>())
            _bay.PutMass(wheel, kg, x + (misplaced?.Invoke() ?? 0), y + (misplaced?.Invoke() ?? 0), atOnce: true);
        Run(2.3);
    }

    /// <summary>Lets simulated time pass.</summary>
    public void Run(double seconds)
    {
        for (var end = _bay.Time + seconds; _bay.Time + Beat / 2 < end;)
        {
            _time.Advance(TimeSpan.FromSeconds(Beat));
            _bay.AdvanceTo(_bay.Time + Beat);
            if (_weigher is not null && _bay.Time >= _nextWeighing)
                Weigh(_weigher);
        }
    }

    /// <summary>Empties the pads and zeroes them.</summary>
    public void Zero()
    {
        Put(0);
        foreach (var pad in Pads)
            Assert.Null(Again(() => _zeros.Take(pad, "crew").Refused));
    }

    /// <summary>Calibrates all pads side by side, and adopts what came of it.</summary>
    /// <param name="plan">For each pad.</param>
    /// <param name="found">Told of each outcome.</param>
    /// <param name="ballastKg">What each piece of ballast weighs, which only the crew's simulator knows.</param>
    /// <param name="massError">What a mass weighs more than its label says, kg; nothing when left out.</param>
    /// <param name="misplaced">How far from where it should stand a load is put down, m, asked for each axis; nothing when left out.</param>
    public void Calibrate(
        Func<PadChannel, ProcedurePlan> plan, Action<PadChannel, ProcedureReport> found, IReadOnlyDictionary<string, double>? ballastKg = null,
        Func<string, double>? massError = null, Func<double>? misplaced = null)
    {
        foreach (var pad in Pads)
            Desk.Start(plan(pad), "prover");
        while (Desk.At(Corner.LF).Procedure is { State: ProcedureState.Measuring } first)
        {
            var step = first.Flow.Next!;
            var (x, y) = step.Step.Spot switch { "over cell 1" => (1, 1), "over cell 2" => (1, -1), "over cell 3" => (-1, 1), "over cell 4" => (-1, -1), _ => (0, 0) };
            var ballast = step.Step.Load.Ballast.Sum(label => ballastKg![label]);
            var error = massError is null ? 0 : step.Step.Load.Masses.Sum(massError);
            Put(first.Flow.Plan.Masses.Kg(step.Step.Load) + ballast + error, 0.14 * x, 0.14 * y, misplaced);
            if (step.Step.MinutesHeld is > 0 and var minutes)
                Hold(first.Flow, minutes);
            foreach (var pad in Pads)
                Assert.Null(Again(() => Try(() => Desk.Record(pad.Corner, step.Number, "prover"))));
        }

        foreach (var pad in Pads)
        {
            found(pad, ProcedureDigest.Of(Desk.At(pad.Corner).Procedure!.Flow).Report!);
            Desk.Adopt(pad.Corner, "prover", "");
        }
    }

    // Somebody has a cup of tea; the daemon says when the time is over.
    private void Hold(ProcedureFlow flow, int minutes)
    {
        Assert.Equal(CalibrationCodes.OutOfStep, Assert.Throws<StepRefusedException>(() => Desk.Record(Corner.LF, flow.Next!.Number, "prover")).Diagnostic.Code);
        var since = flow.Readings.First(r => r.Step.MinutesHeld == 0).Reading.Time;
        Run((since + TimeSpan.FromMinutes(minutes) - _clock.ToUtc(_clock.NowNs)).TotalSeconds + 1);
    }

    public void Dispose()
    {
        _bay.Dispose();
        _ledger.Dispose();
        KeptLedgers.Keep(Path.Combine(_folder.FullName, "ledger.db"), _folder.Name);
        _folder.Delete(recursive: true);
    }

    private static ScaleLink.Measure.Diagnostics.Diagnostic? Try(Action act)
    {
        try
        {
            act();
            return null;
        }
        catch (StepRefusedException refused) when (refused.Diagnostic.Code == CalibrationCodes.Unsettled)
        {
            return refused.Diagnostic;
        }
    }

    // Noise keeps a load from resting now and then; whoever calibrates waits a little and tries again.
    private object? Again(Func<object?> act)
    {
        var refused = act();
        for (var i = 0; i < 20 && refused is not null; i++)
        {
            Run(0.5);
            refused = act();
        }

        return refused;
    }

    private void Weigh(BayWeigher weigher)
    {
        _nextWeighing = _bay.Time + WeighingBeat;
        foreach (var pad in Pads)
            pad.Tick(_clock.NowNs);
        while (_blocks.TryNext(out var from, out var to, out _))
        {
            var reading = weigher.Weigh(from, to);
            _live.Publish(reading);
            _siteCheck?.Look(reading);
        }
    }

    private PadConfiguration PadAt(Corner corner) => new()
    {
        Corner = corner,
        Source = new SourceConfiguration { Link = "cable", Baud = 115200, Protocol = ProtocolKind.PadFrames },
        KgPerCount = _hasSensitivity ? _kgPerCount(corner) ?? _bay.Pad((Wheel)(int)corner).KgPerCount : null,
        SpanUncertaintyPercent = 1,
        CorrectTilt = false,
    };
}
