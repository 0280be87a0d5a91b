using Microsoft.Extensions.Time.Testing;
using NSubstitute;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.Pads;

namespace Daemon.Tests.Bay;

/// <summary>Pads whose cables are swapped, and swapped back, with links that stay open or open again. The clock is virtual.</summary>
public class SwappedPadTests
{
    private readonly FakeTimeProvider _time = new();
    private readonly BayClock _clock;
    private readonly PadChannel[] _pads;

    public SwappedPadTests()
    {
        _clock = new BayClock(_time);
        _pads = [.. Corners.All.ToArray().Select(Declared)];
    }

    public static TheoryData<bool> Ways() => [false, true];

    [Theory]
    [MemberData(nameof(Ways))]
    public void In_every_order_a_wrong_pad_is_refused_by_name_and_the_right_one_is_live_again(bool opensAgain)
    {
        foreach (var order in Orders([0, 1, 2, 3]))
        {
            Connect([0, 1, 2, 3], opensAgain);
            Assert.All(_pads, p => Assert.Equal(PadState.Live, p.Snapshot().State));
            Connect(order, opensAgain);
            for (var k = 0; k < 4; k++)
            {
                var seen = _pads[k].Snapshot();
                Assert.Equal(order[k] == k ? PadState.Live : PadState.Refused, seen.State);
                Assert.Equal(order[k] == k ? [] : ["SL-202"], seen.Faults.Select(f => f.Code.Text).Where(c => c is "SL-202" or "SL-106"));
                Assert.Equal(order[k] == k, _pads[k].Observe() is not null);
            }
        }
    }

    [Fact]
    public void Whoever_speaks_after_a_silence_is_asked_who_it_is()
    {
        Connect([0, 1, 2, 3], opensAgain: false);
        Assert.False(_pads[0].IsUnknown);
        Pass(1000);
        Assert.Equal(PadState.Silent, _pads[0].Snapshot().State);
        Assert.True(_pads[0].IsUnknown);
        Introduce(_pads[0], 1);
        Assert.Equal(PadState.Refused, _pads[0].Snapshot().State);
        Introduce(_pads[0], 0);
        Sample(_pads[0]);
        Assert.False(_pads[0].IsUnknown);
        Assert.Equal(PadState.Live, _pads[0].Snapshot().State);
    }

    [Fact]
    public void A_silent_pad_stays_silent_while_its_link_is_opened_again_and_again()
    {
        Connect([0, 1, 2, 3], opensAgain: false);
        Pass(1000);
        for (var k = 0; k < 3; k++)
        {
            _pads[0].LinkOpened(() => default);
            Assert.Equal(PadState.Silent, _pads[0].Snapshot().State);
            Assert.Contains(_pads[0].Snapshot().Faults, f => f.Code == "SL-106");
            Pass(1000);
        }
    }

    // Cables out, a while, cables in.
    private void Connect(int[] order, bool opensAgain)
    {
        if (opensAgain)
            foreach (var pad in _pads)
                pad.LinkFailed(LinkDiagnostics.HungUp("/dev/pad"));
        Pass(1000);
        foreach (var pad in opensAgain ? _pads : [])
            pad.LinkOpened(() => default);
        for (var k = 0; k < 4; k++)
        {
            Sample(_pads[k]);
            Introduce(_pads[k], order[k]);
            Sample(_pads[k]);
        }
    }

    private PadChannel Declared(Corner corner)
    {
        var source = new SourceConfiguration { Link = $"/dev/{corner}", Baud = 9600, Protocol = ProtocolKind.PadFrames };
        var pad = new PadChannel(new PadConfiguration { Corner = corner, Source = source, SerialNumber = $"SLP-{(int)corner}", KgPerCount = 1, SpanUncertaintyPercent = 1, CorrectTilt = false }, _clock,
            new PadRecords(Substitute.For<IZeroStore>(), Substitute.For<ICalibrationStore>(), new Place("bay", 9.81, 1e-6)));
        pad.LinkOpened(() => default);
        return pad;
    }

    private static void Introduce(PadChannel pad, int who) => pad.OnIdentity(new PadIdentity($"SLP-{(int)Corners.All[who]}", "", (uint)who, 4, 80, 600));

    private void Sample(PadChannel pad) => pad.OnSample(new RawSample { ArrivalNs = _clock.NowNs, Cells = 4 });

    private void Pass(int ms)
    {
        for (var k = 0; k < ms; k += 10)
        {
            _time.Advance(TimeSpan.FromMilliseconds(10));
            foreach (var pad in _pads)
                pad.Tick(_clock.NowNs);
        }
    }

    private static IEnumerable<int[]> Orders(int[] of) =>
        of.Length == 0 ? [[]] : of.SelectMany(first => Orders([.. of.Where(x => x != first)]).Select(rest => (int[])[first, .. rest]));
}
