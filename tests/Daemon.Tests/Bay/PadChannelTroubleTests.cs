using Microsoft.Extensions.Time.Testing;
using NSubstitute;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.Pads;
using ZeroPoint = ScaleLink.Daemon.Bay.ZeroPoint;

namespace Daemon.Tests.Bay;

/// <summary>A pad and what its sources tell of themselves. The clock is virtual; only the ledger is left out.</summary>
public class PadChannelTroubleTests
{
    private readonly FakeTimeProvider _time = new();
    private readonly BayClock _clock;
    private ProtocolCounters _counters;

    public PadChannelTroubleTests() => _clock = new BayClock(_time);

    [Fact]
    public void Trouble_that_stops_silences_the_pad_at_once_and_a_sample_ends_it()
    {
        var pad = Live(protocol: ProtocolKind.ModbusRtu);
        pad.OnTrouble(Code.Read("SL-211"), "Slave 3 does not answer.", "Check its power.", stops: true);
        Assert.Equal(PadState.Silent, pad.Snapshot().State);
        Assert.Null(pad.Snapshot().LoadKg);
        Tick(pad, 1000);
        Assert.DoesNotContain(pad.Snapshot().Faults, f => f.Code == "SL-106");
        pad.OnTroubleOver(Code.Read("SL-211"));
        Sample(pad);
        Assert.Equal(PadState.Live, pad.Snapshot().State);
        Assert.DoesNotContain(pad.Snapshot().Faults, f => f.Code == "SL-211");
    }

    [Theory]
    [InlineData(false, "SL-106")]
    [InlineData(true, "SL-201")]
    public void Silence_and_bytes_without_sense_are_told_apart(bool hasBytes, string code)
    {
        var pad = Live();
        for (var k = 0; k < 60; k++)
        {
            if (hasBytes)
                pad.Received(100);
            Tick(pad, 10);
        }

        Assert.Equal(PadState.Silent, pad.Snapshot().State);
        Assert.Contains(pad.Snapshot().Faults, f => f.Code == code);
        Assert.DoesNotContain(pad.Snapshot().Faults, f => f.Code.Text is "SL-106" or "SL-201" && f.Code != code);
    }

    [Fact]
    public void Damage_is_told_while_the_pad_stays_live()
    {
        var pad = Live();
        for (var k = 0; k < 300; k++)
        {
            Sample(pad);
            _counters = new ProtocolCounters(_counters.Frames + 1, k / 30, 0);
            Tick(pad, 10);
        }

        Assert.Equal(PadState.Live, pad.Snapshot().State);
        Assert.Contains(pad.Snapshot().Faults, f => f.Code == "SL-201");
    }

    [Fact]
    public void A_tilt_of_its_own_source_is_used_and_taken_away_with_it_while_loads_go_on()
    {
        var pad = Live(hasTilt: true);
        pad.TiltSource!.LinkOpened(() => default);
        pad.TiltSource.OnSample(new RawSample { PitchDegrees = 1, RollDegrees = -2 });
        Sample(pad, pitch: 9);
        Assert.Equal((1, -2), (pad.Snapshot().PitchDegrees, pad.Snapshot().RollDegrees));

        pad.TiltSource.LinkFailed(LinkDiagnostics.HungUp("/dev/tilt"));
        Assert.Null(pad.Snapshot().PitchDegrees);
        Assert.Contains("(SL-105)", Assert.Single(pad.Snapshot().Faults, f => f.Code == "SL-208").Message);
        Assert.Equal(PadState.Live, pad.Snapshot().State);
        pad.LinkOpened(() => default);
        pad.OnIdentity(new PadIdentity("SLP-1", "", 0, 1, 0, 600));
        Assert.Contains(pad.Snapshot().Faults, f => f.Code == "SL-208");

        pad.TiltSource.OnSample(new RawSample { PitchDegrees = 1, RollDegrees = -2 });
        Assert.DoesNotContain(pad.Snapshot().Faults, f => f.Code == "SL-208");
        Sample(pad);
        for (var k = 0; k < 120; k++)
        {
            Sample(pad);
            Tick(pad, 10);
        }

        Assert.Contains(pad.Snapshot().Faults, f => f.Code == "SL-208");
        Assert.Null(pad.Snapshot().PitchDegrees);
        Assert.Equal(PadState.Live, pad.Snapshot().State);
    }

    [Fact]
    public void Untimed_samples_of_one_burst_still_follow_each_other()
    {
        var pad = Live();
        for (var k = 0; k < 5; k++)
            Sample(pad);
        Tick(pad, 100);
        Sample(pad);
        var now = _clock.NowNs;
        Assert.NotNull(pad.Block(now - 50_000_000, now - 1_000_000).LoadKg);
    }

    private PadChannel Live(bool hasTilt = false, ProtocolKind protocol = ProtocolKind.PadFrames)
    {
        var source = new SourceConfiguration { Link = "/dev/pad", Baud = 9600, Protocol = protocol };
        var zeros = Substitute.For<IZeroStore>();
        zeros.Latest("SLP-1").Returns(new ZeroPoint("SLP-1", 0, default, "test", null));
        var pad = new PadChannel(
            new PadConfiguration { Corner = Corner.LF, Source = source, Tilt = hasTilt ? source : null, KgPerCount = 1, SpanUncertaintyPercent = 1, CorrectTilt = true }, _clock,
            new PadRecords(zeros, Substitute.For<ICalibrationStore>(), new Place("bay", 9.81, 1e-6)));
        pad.LinkOpened(() => _counters);
        pad.OnIdentity(new PadIdentity("SLP-1", "", 0, 1, 0, 600));
        Sample(pad);
        Assert.Equal(PadState.Live, pad.Snapshot().State);
        return pad;
    }

    private void Sample(PadChannel pad, double? pitch = null) => pad.OnSample(new RawSample { ArrivalNs = _clock.NowNs, Cells = 1, PitchDegrees = pitch, RollDegrees = pitch });

    private void Tick(PadChannel pad, int ms)
    {
        for (var k = 0; k < ms; k += 10)
        {
            _time.Advance(TimeSpan.FromMilliseconds(10));
            pad.Tick(_clock.NowNs);
        }
    }
}
