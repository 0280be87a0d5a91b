using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using ScaleLink.Daemon.Clocks;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Clocks;

/// <summary>A wall clock that is put forward and back, was never set, or falls out of step, beside a monotonic one that just runs. The project's own requirement.</summary>
public sealed class ClockWatchTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 28, 12, 0, 0, TimeSpan.Zero);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();
    private readonly SteppedTime _time = new(Noon);
    private readonly LedgerDatabase _ledger;
    private ClockTrust _trust = ClockTrust.Synchronised;

    public ClockWatchTests() => _ledger = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));

    public void Dispose()
    {
        _ledger.Dispose();
        _folder.Delete(recursive: true);
    }

    [Theory]
    [InlineData(3600)]
    [InlineData(-3600)]
    [InlineData(86400)]
    [InlineData(-86400)]
    [InlineData(5)]
    public void A_step_is_on_record_once_and_published_times_follow_it(double seconds)
    {
        var clock = new BayClock(_time);
        using var watch = Start();
        Pass(10);
        var before = clock.NowNs;
        Assert.Equal(Noon.AddSeconds(10), clock.ToUtc(before));
        _time.Step(TimeSpan.FromSeconds(seconds));
        Pass(10);
        Assert.Equal(Noon.AddSeconds(20 + seconds), clock.ToUtc(clock.NowNs));
        // What happened before the step is told in the time that holds now: so much ago.
        Assert.Equal(Noon.AddSeconds(10 + seconds), clock.ToUtc(before));
        Assert.Equal(10 * Nanoseconds.PerSecond, clock.NowNs - before);
        Assert.Equal([0, seconds], Records().Select(r => r.StepSeconds));
    }

    [Fact]
    public void A_clock_that_was_never_set_is_told_until_it_is_and_one_that_falls_out_of_step_too()
    {
        _trust = ClockTrust.FreeRunning;
        _time.Step(DateTimeOffset.UnixEpoch - Noon);
        using (Start())
        {
            Pass(5);
            _trust = ClockTrust.Synchronised;
            _time.Step(Noon - DateTimeOffset.UnixEpoch);
            Pass(5);
            _trust = ClockTrust.FreeRunning;
            Pass(5);
        }

        Assert.Equal(["Unset", "Synchronised", "FreeRunning"], Records().Select(r => r.Trust));
        // The same at the next start is no news.
        using (Start())
            Pass(5);
        Assert.Equal(3, Records().Count);
    }

    [Fact]
    public void A_start_before_what_is_on_record_is_told_as_a_step_back()
    {
        using (Start())
            Pass(1);
        _time.Step(TimeSpan.FromDays(-3));
        using (Start())
            Pass(1);
        Assert.Equal(2, Records().Count);
        Assert.InRange(Records()[^1].StepSeconds, -3 * 86400, -3 * 86400 + 2);
    }

    [Fact]
    public void Smooth_corrections_are_no_step()
    {
        using var watch = Start();
        for (var k = 0; k < 100; k++)
        {
            _time.Step(TimeSpan.FromMilliseconds(1.9));
            Pass(1);
        }

        Assert.Single(Records());
    }

    [Fact]
    public void A_reader_of_times_is_told_what_they_are_worth()
    {
        Assert.Equal("", ClockRecord.Remark(_ledger, 1, 100));
        using var watch = Start();
        var first = Entry();
        Assert.Equal("", ClockRecord.Remark(_ledger, first, Entry()));
        _time.Step(TimeSpan.FromHours(1));
        Pass(2);
        Assert.Equal("Times: the clock was put forward or back meanwhile.", ClockRecord.Remark(_ledger, first, Entry()));
        _trust = ClockTrust.FreeRunning;
        Pass(2);
        var second = Entry();
        Assert.Equal("Times: the clock ran by itself, in step with no time server; the clock was put forward or back meanwhile.", ClockRecord.Remark(_ledger, first, second));
        Assert.Equal("Times: the clock ran by itself, in step with no time server.", ClockRecord.Remark(_ledger, second, Entry()));
        _time.Step(DateTimeOffset.UnixEpoch - Noon);
        Pass(2);
        Assert.Equal("Times: the clock had not been set.", ClockRecord.Remark(_ledger, Entry(), Entry()));
    }

    // Whatever runs this test may or may not be kept in step; the kernel of Linux says which.
    [Fact]
    public void The_kernel_is_asked() => Assert.Equal(OperatingSystem.IsLinux(), KernelClock.Ask() is ClockTrust.Synchronised or ClockTrust.FreeRunning);

    private ClockWatch Start()
    {
        var watch = new ClockWatch(_ledger, BayFile.Parse("bay = \"unit6\"", "bay.toml").Configuration!, _time, () => _trust, NullLogger<ClockWatch>.Instance);
        watch.StartAsync(CancellationToken.None).GetAwaiter().GetResult();
        return watch;
    }

    private void Pass(int seconds)
    {
        for (var k = 0; k < seconds; k++)
            _time.Advance(TimeSpan.FromSeconds(1));
    }

    private long Entry() => _ledger.Append(_time.GetUtcNow(), "zero", "SLP-1001", "crew", "{}").Id;

    private List<ClockRecord> Records() => [.. ClockRecord.Kind.All(_ledger).Select(e => e.Body)];

    /// <summary>The wall clock can be put forward and back; timers and stamps go on as if nothing had happened.</summary>
    private sealed class SteppedTime(DateTimeOffset start) : FakeTimeProvider(start)
    {
        private TimeSpan _off;

        public void Step(TimeSpan by) => _off += by;

        public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + _off;

        // The library's stamps go by the time above; these do not.
        public override long GetTimestamp() => base.GetTimestamp() - _off.Ticks;
    }
}
