using ScaleLink.Client.Connection;

namespace Client.Tests.Connection;

public class BackoffTests
{
    [Fact]
    public void Waits_grow_to_five_seconds_and_stay_there()
    {
        var backoff = new Backoff();
        var waits = Enumerable.Range(0, 8).Select(_ => backoff.Next().TotalSeconds).ToArray();
        Assert.Equal([0.25, 0.5, 1, 2, 4, 5, 5, 5], waits);
        backoff.Reset();
        Assert.Equal(0.25, backoff.Next().TotalSeconds);
    }
}
