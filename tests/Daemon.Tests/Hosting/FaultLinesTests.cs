using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Hosting;

namespace Daemon.Tests.Hosting;

/// <summary>What the log says of the faults of a pad. The clock is virtual.</summary>
public class FaultLinesTests
{
    private static readonly Diagnostic Damaged = new(PadCodes.BytesDamaged, "3 % of the messages arrived damaged.", "Check the cable.");

    private readonly FakeTimeProvider _time = new();
    private readonly KeptLog _log = new();
    private readonly FaultLines _lines;

    public FaultLinesTests() => _lines = new FaultLines("LF", _time, _log);

    [Fact]
    public void A_fault_is_told_when_it_begins_and_when_it_is_over()
    {
        _lines.Look([Damaged]);
        _lines.Look([Damaged with { Message = "4 % of the messages arrived damaged." }]);
        Assert.Equal(["Warning LF: 3 % of the messages arrived damaged. Check the cable. (SL-201)"], _log.Lines);
        _lines.Look([]);
        Assert.Equal("Information LF: SL-201 is over", _log.Lines[^1]);
    }

    [Fact]
    public void One_that_comes_and_goes_for_ten_minutes_leaves_few_lines_and_loses_no_count()
    {
        for (var k = 0; k < 600; k++)
        {
            _lines.Look(k % 2 == 0 ? [Damaged] : []);
            _time.Advance(TimeSpan.FromSeconds(1));
        }

        // At once, then after 2 and 4 minutes more: each with its end.
        Assert.Equal(6, _log.Lines.Count);
        Assert.Contains("came and went 59 times more", _log.Lines[2]);
        Assert.Contains("came and went 119 times more", _log.Lines[4]);
    }

    [Fact]
    public void After_ten_quiet_minutes_it_is_new()
    {
        _lines.Look([Damaged]);
        _lines.Look([]);
        _time.Advance(TimeSpan.FromSeconds(5));
        _lines.Look([Damaged]);
        _lines.Look([]);
        Assert.Equal(2, _log.Lines.Count);
        _time.Advance(TimeSpan.FromMinutes(11));
        _lines.Look([Damaged]);
        Assert.Equal(3, _log.Lines.Count);
        Assert.DoesNotContain("times more", _log.Lines[^1]);
    }

    [Fact]
    public void A_link_that_hangs_up_and_is_missing_for_a_while_is_two_lines_and_their_end()
    {
        var (hungUp, missing) = (new Diagnostic(LinkCodes.PortHungUp, "It hung up.", "Look."), new Diagnostic(LinkCodes.PortMissing, "It is not there.", "Look."));
        for (var k = 0; k < 150; k++)
        {
            _lines.Look([hungUp]);
            _lines.Look([hungUp, missing]);
            _time.Advance(TimeSpan.FromSeconds(2));
            _lines.Look([]);
            _time.Advance(TimeSpan.FromSeconds(2));
        }

        // Four pads that do so for ten minutes stay below sixty lines.
        Assert.Equal(12, _log.Lines.Count);
    }
}
