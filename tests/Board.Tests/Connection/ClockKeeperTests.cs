using Grpc.Core;
using Grpc.Net.Client;
using Microsoft.Extensions.Time.Testing;
using ScaleLink.Api.V1;
using ScaleLink.Board.Age;
using ScaleLink.Board.Connection;

namespace Board.Tests.Connection;

/// <summary>A clock that was learned before the page's own code ran.</summary>
public class ClockKeeperTests
{
    // Nothing listens there: a question throws.
    private static readonly Feed.FeedClient Nobody = new(GrpcChannel.ForAddress("http://127.0.0.1:1"));

    private readonly FakeTimeProvider _time = new(DateTimeOffset.UnixEpoch.AddYears(30));

    [Fact]
    public async Task It_is_taken_without_a_question_and_makes_no_value_look_younger_than_it_is()
    {
        var keeper = new ClockKeeper(Nobody, _time);
        _time.Advance(TimeSpan.FromSeconds(5));
        var before = _time.GetTimestamp();
        _time.Advance(TimeSpan.FromMilliseconds(20));
        keeper.Take(new LearnedClock(new GetClockResponse { StartId = "run", MonotonicNs = 100_000_000_000 }, TimeSpan.FromSeconds(2)), before);
        await keeper.Ask(TestContext.Current.CancellationToken);
        // Asked 2 s before: now is 102 s at least, and 20 ms later at most.
        var age = keeper.Clock.AgeOf(new Stamp { StartId = "run", MonotonicNs = 101_500_000_000 });
        Assert.InRange(age!.Value.TotalMilliseconds, 500, 520);
    }

    [Fact]
    public async Task The_next_attempt_asks_again()
    {
        var keeper = new ClockKeeper(Nobody, _time);
        keeper.Take(new LearnedClock(new GetClockResponse { StartId = "run", MonotonicNs = 1 }, TimeSpan.FromSeconds(1)), _time.GetTimestamp());
        await keeper.Ask(TestContext.Current.CancellationToken);
        await Assert.ThrowsAsync<RpcException>(() => keeper.Ask(TestContext.Current.CancellationToken));
    }
}
