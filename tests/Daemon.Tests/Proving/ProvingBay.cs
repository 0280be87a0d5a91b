using CarOnPads;
using CarOnPads.Physics;
using Daemon.Tests.Settling.Trials;
using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Ledger;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Proving;
using ScaleLink.Daemon.Publishing;
using ScaleLink.Daemon.Zeros;
using ScaleLink.Weighing;
using ScaleLink.Weighing.Calibration;

namespace Daemon.Tests.Proving;

/// <summary>The simulated bench, the daemon's pads from bytes to loads, a real ledger and the bench where pads are proved, in virtual time.</summary>
internal sealed class ProvingBay : IDisposable
{
    private const double Beat = 0.004;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-proving-");
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));
    private readonly Cable[] _cables = [new(), new(), new(), new()];
    private readonly LedgerDatabase _ledger;
    private readonly Bay _bay;
    private readonly ZeroTaking _zeros;

    public ProvingBay(BayOptions options)
    {
        _ledger = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));
        _bay = new Bay(options, wheel => _cables[(int)wheel]);
        var clock = new BayClock(_time);
        var (zeros, calibrations) = (new ZeroLedger(_ledger), new CalibrationLedger(_ledger));
        var records = new PadRecords(zeros, calibrations, Here);
        Pads = [.. Enum.GetValues<Corner>().Select(corner => new PadChannel(PadAt(corner), clock, records))];
        for (var i = 0; i < 4; i++)
            _cables[i].Connect(Pads[i], clock);
        _zeros = new ZeroTaking(clock, zeros);
        Desk = new ProofDesk(new LiveBay(Pads), new ProofLedger(_ledger, calibrations), calibrations, clock);
    }

    public static Place Here { get; } = new("trial", 9.81, 1e-6);

    public IReadOnlyList<PadChannel> Pads { get; }

    public ProofDesk Desk { get; }

    /// <summary>Puts a mass on every pad and lets it come to rest.</summary>
    public void Put(double kg, double x = 0, double y = 0)
    {
        foreach (var wheel in Enum.GetValues<Wheel>())
            _bay.PutMass(wheel, kg, x, y, atOnce: true);
        Run(2.3);
    }

    /// <summary>Lets simulated time pass.</summary>
    public void Run(double seconds)
    {
        for (var end = _bay.Time + seconds; _bay.Time + Beat / 2 < end;)
        {
            _time.Advance(TimeSpan.FromSeconds(Beat));
            _bay.AdvanceTo(_bay.Time + Beat);
        }
    }

    /// <summary>Empties the pads and zeroes them.</summary>
    public void Zero()
    {
        Put(0);
        foreach (var pad in Pads)
            Assert.Null(Again(() => _zeros.Take(pad, "crew").Refused));
    }

    /// <summary>Proves all pads side by side, and adopts what came of it.</summary>
    public void Prove(Func<PadChannel, ProofPlan> plan, Action<PadChannel, ProofReport> found)
    {
        foreach (var pad in Pads)
            Desk.Start(plan(pad), "prover");
        while (Desk.At(Corner.LF).Proof is { State: ProofState.Measuring } first)
        {
            var step = first.Flow.Next!;
            var (x, y) = step.Step.Spot switch { "over cell 1" => (1, 1), "over cell 2" => (1, -1), "over cell 3" => (-1, 1), "over cell 4" => (-1, -1), _ => (0, 0) };
            Put(first.Flow.Plan.Masses.Kg(step.Step.Load), 0.14 * x, 0.14 * y);
            foreach (var pad in Pads)
                Again(() => Try(() => Desk.Record(pad.Corner, step.Number, "prover")));
        }

        foreach (var pad in Pads)
        {
            found(pad, ProofDigest.Of(Desk.At(pad.Corner).Proof!.Flow).Report!);
            Desk.Adopt(pad.Corner, "prover", "");
        }
    }

    public void Dispose()
    {
        _bay.Dispose();
        _ledger.Dispose();
        _folder.Delete(recursive: true);
    }

    private static Refusal? Try(Action act)
    {
        try
        {
            act();
            return null;
        }
        catch (RefusedException refused) when (refused.Refusal.Code == "SL-301")
        {
            return refused.Refusal;
        }
    }

    // Noise keeps a load from resting now and then; whoever proves waits a little and tries again.
    private object? Again(Func<object?> act)
    {
        for (var i = 0; i < 20 && act() is not null; i++)
            Run(0.5);
        return null;
    }

    private PadConfiguration PadAt(Corner corner) => new()
    {
        Corner = corner,
        Source = new SourceConfiguration { Link = "cable", Baud = 115200, Protocol = ProtocolKind.PadFrames },
        KgPerCount = _bay.Pad((Wheel)(int)corner).KgPerCount,
        SpanUncertaintyPercent = 1,
        CorrectTilt = false,
    };
}
