using CarOnPads.Bench;
using CarOnPads.Physics;
using Daemon.Tests.Settling.Trials;
using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Calibration;
using ScaleLink.Daemon.Workflows.InclinometerZeros;
using ScaleLink.Daemon.Workflows.SiteCheck;
using ScaleLink.Daemon.Workflows.Zeros;
using ScaleLink.Measure;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.SiteCheck;
using ScaleLink.Weighing.Zeros;
using Shared;

namespace Daemon.Tests.Workflows.InclinometerZeros;

/// <summary>The simulated bench with the car off its pads, the daemon's pads from bytes to loads, and a real ledger, in virtual time.</summary>
internal sealed class InclinometerZeroBay : IDisposable
{
    private const double Beat = 0.004;
    // Put down, and the whole of a window since.
    private const double TurnAndRest = 4;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-tilt-");
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 11, 28, 9, 0, 0, TimeSpan.Zero));
    private readonly Cable[] _cables = [new(), new(), new(), new()];
    private readonly LedgerDatabase _ledger;
    private readonly BayClock _clock;
    private readonly ZeroTaking _zeros;

    public InclinometerZeroBay(string imperfections = "none", int seed = 1)
    {
        Bench = new CarOnPads.Bench.Bay(new BayOptions { Seed = seed, Hertz = 80, Raised = true, Imperfections = CarOnPads.Cells.Imperfections.Parse(imperfections) }, wheel => _cables[(int)wheel]);
        _ledger = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));
        _clock = new BayClock(_time);
        var zeros = new ZeroLedger(_ledger);
        _zeros = new ZeroTaking(_clock, zeros);
        var records = new PadRecords(zeros, new CalibrationLedger(_ledger), new Place("trial", 9.81, 1e-6)) { InclinometerZeros = new InclinometerZeroLedger(_ledger) };
        Pads = [.. Enum.GetValues<Corner>().Select(corner => new PadChannel(PadAt(corner), _clock, records))];
        for (var i = 0; i < 4; i++)
            _cables[i].Connect(Pads[i], _clock);
        Desk = TakeUp();
        Run(3);
    }

    public CarOnPads.Bench.Bay Bench { get; }

    public IReadOnlyList<PadChannel> Pads { get; }

    /// <summary>Where zeros are tested.</summary>
    public InclinometerZeroDesk Desk { get; private set; }

    /// <summary>The desk made anew from the ledger, as after a restart.</summary>
    public InclinometerZeroDesk TakeUp() => Desk = new(new InclinometerZeroLedger(_ledger), Configuration, _clock);

    /// <summary>Lets simulated time pass.</summary>
    public void Run(double seconds)
    {
        for (var end = Bench.Time + seconds; Bench.Time + Beat / 2 < end;)
        {
            _time.Advance(TimeSpan.FromSeconds(Beat));
            Bench.AdvanceTo(Bench.Time + Beat);
        }
    }

    /// <summary>Nobody works; only the clock of the wall goes on.</summary>
    public void Pause(TimeSpan pause) => _time.Advance(pause);

    /// <summary>Turns the pad round and lets it come to rest.</summary>
    public void Turn(params Corner[] corners)
    {
        foreach (var corner in corners)
            Bench.TurnPad((Wheel)(int)corner);
        Run(TurnAndRest);
    }

    /// <summary>The ground under a pad, degrees.</summary>
    public void Ground(Corner corner, double pitch, double roll) => (Pad(corner).PitchDegrees, Pad(corner).RollDegrees) = (pitch, roll);

    public CarOnPads.Pads.Pad Pad(Corner corner) => Bench.Pad((Wheel)(int)corner);

    /// <summary>Takes a reading; gives the code of its refusal, or nothing.</summary>
    public string? Read(Corner corner = Corner.LF, bool saidTurned = false, int? number = null) => Refused(corner, saidTurned, number)?.Code;

    public ScaleLink.Measure.Diagnostics.Diagnostic? Refused(Corner corner, bool saidTurned = false, int? number = null) =>
        Refused(() => Desk.Read(Pads[(int)corner], new InclinometerZeroStep(SaidTurned: saidTurned, Number: number), "crew"));

    /// <summary>Why a step was refused; nothing when it was taken.</summary>
    public static ScaleLink.Measure.Diagnostics.Diagnostic? Refused(Action step) => (Record.Exception(step) as StepRefusedException)?.Diagnostic;

    /// <summary>A whole test of these pads at once.</summary>
    public void Test(params Corner[] corners)
    {
        for (var reading = 1; reading <= 4; reading++)
        {
            if (reading > 1)
                Turn(corners);
            foreach (var corner in corners)
                Assert.Null(Refused(corner));
        }
    }

    /// <summary>Zeroes the empty pads.</summary>
    public void Zero()
    {
        foreach (var pad in Pads)
            Assert.Null(_zeros.Take(pad, "crew").Refused);
    }

    /// <summary>The pad's load over the last 50 ms that are whole.</summary>
    public PadBlock Block(Corner corner) => Pads[(int)corner].Block(_clock.NowNs - 150_000_000, _clock.NowNs - 100_000_000);

    /// <summary>The pad as the watch of the paddock sees it.</summary>
    public WatchedPad Watched(Corner corner)
    {
        var pad = Pads[(int)corner];
        var tape = new PadTape(pad, pad.Standing.Identity!.SerialNumber, pad.Standing.Calibration, 0);
        tape.Take(_clock.NowNs - 100_000_000, 1, heavyKg: 10);
        return tape.Watched(250, Configuration.Place, 1);
    }

    public void Dispose()
    {
        Bench.Dispose();
        _ledger.Dispose();
        KeptLedgers.Keep(Path.Combine(_folder.FullName, "ledger.db"), _folder.Name);
        _folder.Delete(recursive: true);
    }

    private static BayConfiguration Configuration => new()
    {
        Bay = "trial",
        Pads = [],
        Listen = new ListenConfiguration("127.0.0.1", 0, 0),
        Mqtt = new MqttConfiguration(BrokerKind.Off, "", 0, 1, null, null),
        Weigh = new WeighConfiguration(SettledToleranceKg: 0.1, RaisedBelowKg: 5),
        Place = new Place("trial", 9.81, 1e-6),
        ZeroTracking = new ZeroTrackingOptions(),
        LedgerPath = "",
        Recorder = new RecorderConfiguration(TimeSpan.Zero, "", 0),
    };

    private PadConfiguration PadAt(Corner corner) => new()
    {
        Corner = corner,
        Source = new SourceConfiguration { Link = "cable", Baud = 115200, Protocol = ProtocolKind.PadFrames },
        KgPerCount = Bench.Pad((Wheel)(int)corner).KgPerCount,
        SpanUncertaintyPercent = 0.01,
        CorrectTilt = true,
    };
}
