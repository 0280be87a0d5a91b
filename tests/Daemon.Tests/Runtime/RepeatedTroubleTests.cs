using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Runtime;

public class RepeatedTroubleTests
{
    [Fact]
    public void An_hour_of_the_same_failure_is_two_lines_and_another_one_is_told_at_once()
    {
        var log = new KeptLog();
        var trouble = new RepeatedTrouble("Writing", log);
        Assert.True(trouble.Try(() => { }));
        for (var second = 0; second < 3600; second++)
            Assert.False(trouble.Try(() => throw new IOException("No space left on device")));
        Assert.False(trouble.Try(() => throw new IOException("Read-only file system")));
        Assert.True(trouble.Try(() => { }));
        Assert.True(trouble.Try(() => { }));
        Assert.Equal(["Warning Writing failed, and is tried again", "Warning Writing failed, and is tried again", "Information Writing: goes again after 3601 failures"], log.Lines);
    }
}
