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

        // At once, then after 1, 2 and 4 minutes more: each with its end.
        Assert.Equal(8, _log.Lines.Count);
        Assert.Contains("came and went 29 times more", _log.Lines[2]);
        Assert.Contains("came and went 59 times more", _log.Lines[4]);
        Assert.Contains("came and went 119 times more", _log.Lines[6]);
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
    public void What_the_link_tells_itself_is_not_told_twice()
    {
        _lines.Look([new(LinkCodes.PortHungUp, "It hung up.", ""), new(PadStateCodes.NoZero, "The pad has no zero.", "")]);
        Assert.Empty(_log.Lines);
    }
}
