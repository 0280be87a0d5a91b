using System.Diagnostics;
using Microsoft.Data.Sqlite;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Timing.Tests;

/// <summary>
/// Another program holds the ledger for some seconds, as a slow disk does, while a whole crew presses: every step waits and is taken, and the feed goes on as
/// if nothing was. The project's own requirement.
/// </summary>
[Trait("needs", "bay")]
public sealed class HeldLedgerTests(ITestOutputHelper output)
{
    private const int Pressing = 8;

    // Messages come every 50 ms; a thread that is made when none is free takes half a second, and each waiting step wanted one.
    private static readonly TimeSpan LongestGap = TimeSpan.FromSeconds(0.4), Held = TimeSpan.FromSeconds(3.5);

    [Fact]
    public async Task Steps_wait_for_the_disk_and_loads_do_not()
    {
        using var bay = new BayRig();
        bay.Zero();
        using var watch = new LoadsWatch(bay.Daemon);
        Wait.Until(() => watch.Received.Count > 10, Wait.Patience, "loads come");

        long held;
        List<Task<ZeroPadsResponse>> steps;
        using (var ledger = new SqliteConnection($"Data Source={Path.Combine(Path.GetDirectoryName(bay.BayFile)!, "ledger.db")};Pooling=False"))
        {
            ledger.Open();
            using var holding = ledger.BeginTransaction(deferred: false);
            held = Stopwatch.GetTimestamp();
            steps = [.. Enumerable.Range(0, Pressing).Select(k => bay.Daemon.Control.ZeroPadsAsync(new ZeroPadsRequest { Who = $"crew {k}" }).ResponseAsync)];
            await Task.Delay(Held, TestContext.Current.CancellationToken);
            Assert.DoesNotContain(steps, s => s.IsCompleted);
        }

        var answers = await Task.WhenAll(steps).WaitAsync(Wait.Patience, TestContext.Current.CancellationToken);
        var times = watch.Received.Where(r => r.At >= held).Select(r => r.At).ToList();
        var longest = times.Zip(times.Skip(1), (a, b) => Stopwatch.GetElapsedTime(a, b)).Max();
        output.WriteLine($"{Pressing} steps waited {Held.TotalSeconds} s for the ledger; loads came at most {longest.TotalMilliseconds:0} ms apart");
        Assert.True(longest < LongestGap, $"loads stayed away for {longest.TotalMilliseconds:0} ms");
        Assert.All(answers, a => Assert.Contains(a.Results, r => r.Zero is not null));
    }
}
