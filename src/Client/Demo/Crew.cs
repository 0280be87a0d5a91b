using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Client.Demo;

/// <summary>How the crew's work ended.</summary>
internal sealed record CrewResult(bool IsOnTarget, int Adjustments, Loads Reading);

/// <summary>
/// A crew at work: zero, car on, settle, weighing, turn what the work session plans, until cross weight is on target. It knows of
/// the car only what the daemon publishes.
/// </summary>
internal sealed class Crew(DemoBay bay, ICrewBoard board, Glyphs glyphs, TimeProvider time)
{
    private const double SettleSeconds = 1.5;
    private const int MostReadings = 14;
    private static readonly TimeSpan AskAgain = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan LongestSettling = TimeSpan.FromSeconds(12);

    private readonly CrewSession _session = new(bay.Daemon);

    /// <summary>The whole story.</summary>
    /// <exception cref="ClientException">The bay refuses something.</exception>
    public async Task<CrewResult> WorkSessions(CancellationToken stop)
    {
        await TakeZero(stop);
        await _session.Start(stop);
        board.Say("Heron, driver in, comes down on the pads");
        board.Announce("car on the pads", null);
        await Wait(await bay.Car.Lower(stop), stop);
        var (readings, adjustments) = (0, 0);
        while (true)
        {
            var reading = await SettleAndRead(isFirst: readings == 0, stop);
            await _session.Weighing(stop);
            board.Read(reading);
            var isOnTarget = reading.Aim == Aim.Within;
            if (isOnTarget || ++readings > MostReadings)
                return new CrewResult(isOnTarget, adjustments, reading);
            if (await _session.Next(stop) is not { } plan)
                continue;
            adjustments++;
            await TurnPerches(plan, stop);
        }
    }

    private async Task TakeZero(CancellationToken stop)
    {
        board.Say("Pads are empty: taking the zero");
        var request = new ZeroPadsRequest { Who = CrewSession.Who };
        var since = time.GetTimestamp();
        while (true)
        {
            var answer = await bay.Daemon.Ask(options => bay.Daemon.PadControl.ZeroPadsAsync(request, options), stop);
            if (answer.Results.FirstOrDefault(r => r.Refused is not null)?.Refused is not { } refused)
                return;
            // Pads that have only just begun to speak are refused for some tenths of a second.
            if (time.GetElapsedTime(since) > LongestSettling)
                throw new ClientException(DiagnosticReader.Read(refused));
            await Wait(AskAgain, stop);
        }
    }

    private async Task TurnPerches(Api.V1.PerchPlan plan, CancellationToken stop)
    {
        var asked = plan.Turns.ToCorners();
        board.Say(CrewWords.Say(asked, plain: !glyphs.IsRich));
        board.Announce(CrewWords.Turns(asked, plain: !glyphs.IsRich), plan.Predicted.CrossWeightPercent.Estimate);
        var longest = TimeSpan.Zero;
        foreach (var (corner, turns) in new[] { ("LF", plan.Turns.Lf), ("RF", plan.Turns.Rf), ("LR", plan.Turns.Lr), ("RR", plan.Turns.Rr) }.Where(t => t.Item2 != 0))
        {
            var takes = await bay.Car.Turn(corner, turns, stop);
            longest = takes > longest ? takes : longest;
        }

        await Wait(longest, stop);
    }

    // Rolling lets go what the tyres hold after the car came down. Later it would only put other parts of the tyres on the pads.
    private async Task<Loads> SettleAndRead(bool isFirst, CancellationToken stop)
    {
        while (true)
        {
            board.Say(isFirst ? "Rolling and bouncing the car, then hands off" : "Bouncing the car, then hands off");
            await Wait(await bay.Car.Settle(SettleSeconds, isFirst, stop), stop);
            board.Say("Hands off: waiting for the car to settle");
            board.HandsOff();
            if (await ReadSettled(stop) is { } reading)
                return reading;
        }
    }

    // Nothing when the car does not come to rest: then the settle is done again.
    private async Task<Loads?> ReadSettled(CancellationToken stop)
    {
        var since = time.GetTimestamp();
        await foreach (var view in new LoadsFeed(bay.Daemon).WithCancellation(stop))
        {
            var elapsed = time.GetElapsedTime(since);
            // A value from before the hands were off would be the last adjustment's.
            if (view is { Freshness: Freshness.Live, Message: { WeighingReady: true } loads } && view.Age < elapsed)
                return loads;
            if (elapsed > LongestSettling)
                break;
        }

        return null;
    }

    private Task Wait(TimeSpan span, CancellationToken stop) => Task.Delay(span, time, stop);
}
