using System.Globalization;
using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Clocks;

/// <summary>
/// Follows the wall clock beside the monotonic one. Nothing that is weighed or waited for goes by it, but records carry its time: when it is put forward
/// or back, or begins or ceases to be believable, the ledger says so once, and the entries after that are to be read by it.
/// </summary>
/// <param name="ledger">The ledger.</param>
/// <param name="bay">Whose clock it is.</param>
/// <param name="time">Both clocks.</param>
/// <param name="ask">What the system says of the wall clock.</param>
/// <param name="log">The log.</param>
internal sealed class ClockWatch(LedgerDatabase ledger, BayConfiguration bay, TimeProvider time, Func<ClockTrust> ask, ILogger<ClockWatch> log) : IHostedService, IDisposable
{
    private const string Who = "scalelinkd";
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);
    // More than any correction that runs smoothly, or a thread that was held up between the two clocks, can make.
    private static readonly TimeSpan LeastStep = TimeSpan.FromSeconds(2);
    // This build is younger than that.
    private static readonly DateTimeOffset CertainlyOver = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private readonly long _start = time.GetTimestamp();
    private ITimer? _timer;
    private TimeSpan _ahead;
    private ClockTrust? _told;

    /// <summary>How far the wall clock can be believed now.</summary>
    public ClockTrust Trust => time.GetUtcNow() < CertainlyOver ? ClockTrust.Unset : ask();

    /// <summary>Looks at both clocks from now on.</summary>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        _ahead = Ahead();
        _told = Enum.TryParse<ClockTrust>(ClockRecord.Kind.Newest(ledger, bay.Bay)?.Body.Trust, out var told) ? told : null;
        Tell(StepSinceTheNewestEntry());
        _timer = time.CreateTimer(_ => Look(), null, Beat, Beat);
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        Dispose();
        return Task.CompletedTask;
    }

    public void Dispose() => _timer?.Dispose();

    private void Look()
    {
        var step = Ahead() - _ahead;
        _ahead += step;
        Tell(step.Duration() >= LeastStep ? step : TimeSpan.Zero);
    }

    private void Tell(TimeSpan step)
    {
        var trust = Trust;
        if (step == TimeSpan.Zero && trust == _told)
            return;
        if (step != TimeSpan.Zero)
            log.LogWarning("The wall clock was put {Direction} by {Step}; loads and waits do not go by it, times of records do", step > TimeSpan.Zero ? "forward" : "back", step.Duration().ToString("c", CultureInfo.InvariantCulture));
        if (trust != _told)
            log.LogInformation("The wall clock is {Trust}", trust);
        try
        {
            ClockRecord.Kind.Append(ledger, time.GetUtcNow(), bay.Bay, Who, new(trust.ToString(), Math.Round(step.TotalSeconds, 1)));
            _told = trust;
        }
        catch (Exception e) when (e is SqliteException or IOException or UnauthorizedAccessException)
        {
            // A full disk: said with the next look that finds room, but for the step, which the log has.
            _told = null;
        }
    }

    // While the daemon was not there: only a clock that stands before what is on record shows.
    private TimeSpan StepSinceTheNewestEntry() =>
        ledger.NewestAt is { } newest && newest - time.GetUtcNow() is var back && back >= LeastStep ? -back : TimeSpan.Zero;

    private TimeSpan Ahead() => time.GetUtcNow() - DateTimeOffset.UnixEpoch - time.GetElapsedTime(_start);
}
