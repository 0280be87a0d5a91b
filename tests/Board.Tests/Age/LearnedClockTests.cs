using ScaleLink.Board.Age;

namespace Board.Tests.Age;

/// <summary>The daemon's clock in the words of js/opening.js.</summary>
public class LearnedClockTests
{
    [Fact]
    public void Run_clock_and_time_since_are_read()
    {
        var learned = LearnedClock.Read("a47ffacf6b7f 5586015700 1234.5");
        Assert.Equal("a47ffacf6b7f", learned?.Answer.StartId);
        Assert.Equal(5_586_015_700, learned?.Answer.MonotonicNs);
        Assert.Equal(1234.5, learned?.Since.TotalMilliseconds);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("null null 3")]
    [InlineData("run 12")]
    [InlineData("run -5 12")]
    [InlineData("run 5 -1")]
    [InlineData("run 5 61000")]
    [InlineData("run 5 NaN")]
    public void Anything_else_is_no_clock(string? told) => Assert.Null(LearnedClock.Read(told));
}
