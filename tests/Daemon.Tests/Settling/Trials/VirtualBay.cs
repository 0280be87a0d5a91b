using CarOnPads.Bench;
using CarOnPads.Physics;
using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Measure;
using ScaleLink.Weighing.Pads;

using ZeroPoint = ScaleLink.Daemon.Bay.ZeroPoint;

namespace Daemon.Tests.Settling.Trials;

/// <summary>One block as it came out of the pipeline.</summary>
/// <param name="Seconds">When it came out, simulated time.</param>
/// <param name="Reading">What the faces are told.</param>
/// <param name="Loads">What the pads carried over the block, kg; absent while a pad gives no load.</param>
internal readonly record struct WeighedBlock(double Seconds, BayReading Reading, Corners? Loads);

/// <summary>
/// The simulated bench and the daemon's real pipeline from bytes to readings (decoder, clock map, zero, span, tilt, alignment, estimator) in one process
/// and in virtual time, so that hundreds of records can be run.
/// </summary>
internal sealed class VirtualBay : IDisposable
{
    private const double Beat = 0.004;
    // The weighing loop wakes this often.
    private const double WeighingBeat = 0.01;

    private readonly FakeTimeProvider _time = new();
    private readonly Cable[] _cables = [new(), new(), new(), new()];
    private readonly PadChannel[] _pads;
    private readonly BlockClock _blocks;
    private readonly BayWeigher _weigher;
    private readonly BayClock _clock;
    private double _nextWeighing;

    public VirtualBay(BayOptions options, CarConfiguration? car = null)
    {
        Bay = new CarOnPads.Bench.Bay(options, wheel => _cables[(int)wheel]);
        _clock = new BayClock(_time);
        var records = new PadRecords(new NoRecords(), new NoRecords(), new Place("trial", 9.81, 1e-6));
        _pads = [.. Enum.GetValues<Corner>().Select(corner => new PadChannel(PadAt(corner), _clock, records))];
        for (var i = 0; i < 4; i++)
            _cables[i].Connect(_pads[i], _clock);
        _blocks = new BlockClock(_pads, _clock);
        _weigher = new BayWeigher(_pads, new WeighConfiguration(SettledToleranceKg: 0.1, RaisedBelowKg: 5), new RockingPrior(CarRocking.DirectionOf(car)), reading => reading);
    }

    public CarOnPads.Bench.Bay Bay { get; }

    public List<WeighedBlock> Blocks { get; } = [];

    public BayReading? Newest => Blocks.Count > 0 ? Blocks[^1].Reading : null;

    /// <summary>Lets simulated time pass.</summary>
    public void Run(double seconds)
    {
        for (var end = Bay.Time + seconds; Bay.Time + Beat / 2 < end;)
        {
            _time.Advance(TimeSpan.FromSeconds(Beat));
            Bay.AdvanceTo(Bay.Time + Beat);
            if (Bay.Time >= _nextWeighing)
                Weigh();
        }
    }

    public void Dispose() => Bay.Dispose();

    private void Weigh()
    {
        _nextWeighing = Bay.Time + WeighingBeat;
        foreach (var pad in _pads)
            pad.Tick(_clock.NowNs);
        while (_blocks.TryNext(out var from, out var to, out _))
        {
            var loads = _pads.Select(p => p.Block(from, to).LoadKg).ToArray();
            Blocks.Add(new WeighedBlock(Bay.Time, _weigher.Weigh(from, to), loads.Contains(null) ? null : Corners.From(c => loads[(int)c]!.Value)));
        }
    }

    private PadConfiguration PadAt(Corner corner)
    {
        var wheel = (Wheel)(int)corner;
        return new PadConfiguration
        {
            Corner = corner,
            Source = new SourceConfiguration { Link = "cable", Baud = 115200, Protocol = ProtocolKind.PadFrames },
            KgPerCount = Bay.Pad(wheel).KgPerCount,
            SpanUncertaintyPercent = 1e-4,
            CorrectTilt = false,
        };
    }

    /// <summary>The simulated bridges have no offset here, and their pads were never calibrated.</summary>
    private sealed class NoRecords : IZeroStore, ICalibrationStore
    {
        public ZeroPoint? Latest(string serialNumber) => new(serialNumber, 0, DateTimeOffset.UnixEpoch, "trial", null);

        public IReadOnlyList<ZeroPoint> History(string serialNumber) => [];

        public double TrackedKg(ZeroPoint zero) => 0;

        public PadCalibration? InEffect(string serialNumber) => null;

        public PadCalibration? LastAt(Corner corner) => null;

        public void AppendTrack(ZeroPoint zero, double kg, DateTimeOffset at) => throw Unused();

        public void AppendCheck(ZeroPoint zero, double kg, DateTimeOffset at) => throw Unused();

        private static NotSupportedException Unused() => new("No zero is taken here.");
    }
}
