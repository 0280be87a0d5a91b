using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Readings;

namespace ScaleLink.Client.Demo;

/// <summary>How the crew's work ended.</summary>
internal sealed record CrewResult(bool IsOnTarget, int Adjustments, Loads Reading);

/// <summary>
/// A crew at work: zero, car on, settle, read, turn perches, until cross weight is on target. It knows of the car only what
/// the daemon publishes.
/// </summary>
internal sealed class Crew(DemoBay bay, ICrewBoard board, Glyphs glyphs, TimeProvider time)
{
    private const double RitualSeconds = 1.5;
    private const int MostAdjustments = 12;
    private static readonly TimeSpan AskAgain = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan LongestSettling = TimeSpan.FromSeconds(12);

    /// <summary>The whole story.</summary>
    /// <exception cref="ClientException">The bay refuses something.</exception>
    public async Task<CrewResult> Work(CancellationToken stop)
    {
        await TakeZero(stop);
        board.Say("Heron, driver in, comes down on the pads");
        board.Announce("car on the pads", null);
        await Wait(await bay.Car.Lower(stop), stop);
        var readings = new List<PerchReading>();
        var move = new PerchMove();
        while (true)
        {
            var reading = await SettleAndRead(isFirst: readings.Count == 0, stop);
            readings.Add(new PerchReading(reading.CrossWeightPercent.Value, Repeatability.OfCrossWeight(reading)!.Value, move));
            board.Read(reading);
            var isOnTarget = TargetCheck.Of(reading) == Aim.Within;
            if (isOnTarget || readings.Count > MostAdjustments)
                return new CrewResult(isOnTarget, readings.Count - 1, reading);
            (move, var predicted) = PerchRule.Next(readings, reading.Target.CrossWeightPercent);
            await TurnPerches(move, predicted, stop);
        }
    }

    private async Task TakeZero(CancellationToken stop)
    {
        board.Say("Pads are empty: taking the zero");
        var request = new ZeroPadsRequest { Who = "demo crew" };
        var since = time.GetTimestamp();
        while (true)
        {
            var answer = await bay.Daemon.Ask(options => bay.Daemon.PadControl.ZeroPadsAsync(request, options), stop);
            if (answer.Results.FirstOrDefault(r => r.Refused is not null)?.Refused is not { } refused)
                return;
            // Pads that have only just begun to speak are refused for some tenths of a second.
            if (time.GetElapsedTime(since) > LongestSettling)
                throw new ClientException(TroubleReader.Read(refused));
            await Wait(AskAgain, stop);
        }
    }

    private async Task TurnPerches(PerchMove move, double? predicted, CancellationToken stop)
    {
        board.Say($"{PerchWords.Of(move, glyphs)}: then settle");
        board.Announce(PerchWords.Label(move, glyphs), predicted);
        var longest = TimeSpan.Zero;
        foreach (var (corner, eighths) in new[] { ("LF", move.LeftFrontPair), ("RF", move.RightFrontPair), ("LR", move.RightFrontPair), ("RR", move.LeftFrontPair) })
        {
            var takes = await bay.Car.Turn(corner, eighths / 8.0, stop);
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
            await Wait(await bay.Car.Settle(RitualSeconds, isFirst, stop), stop);
            board.Say("Hands off: waiting for the car to settle");
            board.HandsOff();
            if (await ReadSettled(stop) is { } reading)
                return reading;
        }
    }

    // Nothing when the car does not come to rest: then the ritual is done again.
    private async Task<Loads?> ReadSettled(CancellationToken stop)
    {
        var since = time.GetTimestamp();
        await foreach (var view in new LoadsFeed(bay.Daemon).WithCancellation(stop))
        {
            var elapsed = time.GetElapsedTime(since);
            // A value from before the hands were off would be the last adjustment's.
            if (view is { Freshness: Freshness.Live, Message: { } loads } && view.Age < elapsed && IsGoodEnough(loads))
                return loads;
            if (elapsed > LongestSettling)
                break;
        }

        return null;
    }

    // To go on turning, settled is enough; to stop, the reading must be good for the record.
    private static bool IsGoodEnough(Loads loads) => TargetCheck.Of(loads) switch
    {
        Aim.Unknown => false,
        Aim.Within => loads.CaptureReady,
        _ => true,
    };

    private Task Wait(TimeSpan span, CancellationToken stop) => Task.Delay(span, time, stop);
}
