using System.Collections.Concurrent;
using Client.Tests.Terminal;
using ScaleLink.Api.V1;
using ScaleLink.Client;

namespace Client.Tests.Bay;

/// <summary>
/// A session by the guided terminal alone, against the real daemon and the simulated car: one key a step, and from the first weighing to the end no more
/// than twelve. The project's own requirement.
/// </summary>
[Trait("needs", "bay")]
public sealed class GuidedSessionTests(RealBay bay) : IClassFixture<RealBay>
{
    private const int MostKeys = 12, MostReadings = 8;

    private readonly ConcurrentQueue<ConsoleKeyInfo> _keys = new();
    private int _pressed;

    public static bool Can => RealBay.HasPseudoTerminals;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact(Skip = RealBay.WhyNot, SkipUnless = nameof(Can))]
    public async Task From_the_start_to_the_finished_sheet_by_one_key_a_step()
    {
        await bay.Zero();
        await Task.Delay(await bay.Bay.Car.Lower(Cancel), Cancel);
        var output = new StringWriter();
        var screen = CommandLine.Run(["work", "--who", "crew", "--daemon", bay.Address], Shells.Terminal(output) with { Key = () => _keys.TryDequeue(out var key) ? key : null }, Cancel);

        await Step('\r', s => s.State == SessionState.Preparing);
        await Step('\r', s => s.HasRead("crew"));
        await Prepare();
        // A key too many, and one that means nothing here.
        Press('z');
        Press('q');
        Assert.Equal(0, await screen.WaitAsync(TimeSpan.FromSeconds(30), Cancel));
        Assert.EndsWith("\n", output.ToString());
        screen = CommandLine.Run(["work", "--who", "crew", "--daemon", bay.Address], Shells.Terminal(output, width: 40) with { Key = () => _keys.TryDequeue(out var key) ? key : null }, Cancel);

        _pressed = 0;
        var session = await Weigh();
        var steps = 0;
        while (session.Ending.Length == 0 && session.Weighings.Count < MostReadings)
        {
            if (session.Perches.Any(p => p.Left != 0) && session is { WeighNext: false, CanConfirm: false, State: SessionState.Planning })
            {
                session = await Step('\r', s => s.OpenAdjustments.Count == 1);
                Assert.All(session.Perches, p => Assert.Equal(0, p.Left));
                await Turn(session.OpenAdjustments[0].Turns);
                steps++;
            }
            else if (session.State == SessionState.Finishing && !session.WeighNext)
            {
                session = await Finish(session);
                break;
            }

            session = await Weigh();
        }

        Assert.Equal(SessionState.Finished, session.State);
        Press('q');
        Assert.Equal(0, await screen.WaitAsync(TimeSpan.FromSeconds(30), Cancel));
        // Left behind for who scrolls back: how it ended, and where its sheet is.
        Assert.Matches(@"(?s)\e\[\?1049l.*\e\[\?1049lSession \S+ finished: .*work-session export", output.ToString());
        TestContext.Current.TestOutputHelper!.WriteLine($"{steps} steps, {session.Weighings.Count} weighings, {_pressed - 1} keys from the first weighing to the finished sheet");
        Assert.InRange(_pressed - 1, 5, MostKeys);
    }

    // One confirmation an item; what the bay sees otherwise is left out with a reason.
    private async Task Prepare()
    {
        for (var session = await Now(); session.State == SessionState.Preparing;)
        {
            var check = session.Preparation.First(c => !c.Done && !c.Skipped);
            if (check.SeenOtherwise || check.Key == "bars_disconnected")
                Press("lnot today\r");
            else if (check.Key == "fuel")
                Press("v32\r");
            else
                Press('\r');
            session = await Until(s => s.Preparation.Single(c => c.Key == check.Key) is { Done: true } or { Skipped: true });
        }

        Assert.Equal("32", (await Now()).Preparation.Single(c => c.Key == "fuel").Value);
    }

    private async Task<Session> Weigh()
    {
        var before = (await Now()).Weighings.Count;
        Press('\r');
        await Task.Delay(await bay.Bay.Car.Settle(1.5, roll: true, Cancel), Cancel);
        return await Until(s => s.Weighings.Count == before + 1);
    }

    private async Task Turn(CornerNumbers turns)
    {
        foreach (var (corner, by) in new[] { ("LF", turns.Lf), ("RF", turns.Rf), ("LR", turns.Lr), ("RR", turns.Rr) }.Where(t => t.Item2 != 0))
            await Task.Delay(await bay.Bay.Car.Turn(corner, by, Cancel), Cancel);
    }

    private async Task<Session> Finish(Session session)
    {
        foreach (var check in session.LastSteps.Where(c => !c.Done && !c.Skipped))
            session = await Step('\r', s => s.LastSteps.Single(c => c.Key == check.Key).Done);
        var id = session.Id;
        Press(session.Standing.Verdict == AimVerdict.OnTarget ? "\r" : "\rsettling decides nothing more\r");
        for (var tries = 0; ; tries++)
        {
            var ended = await bay.Bay.Daemon.Ask(o => bay.Bay.Daemon.WorkSessions.ShowSessionAsync(new ShowSessionRequest { SessionId = id }, o), Cancel);
            if (ended.Ending.Length > 0)
                return ended;
            Assert.True(tries < 200, "the session does not end");
            await Task.Delay(100, Cancel);
        }
    }

    private async Task<Session> Step(char key, Func<Session, bool> after)
    {
        Press(key);
        return await Until(after);
    }

    private void Press(char key)
    {
        _pressed++;
        _keys.Enqueue(new ConsoleKeyInfo(key, key == '\r' ? ConsoleKey.Enter : 0, shift: false, alt: false, control: false));
    }

    // What is typed as a value is not a key of the step.
    private void Press(string keys)
    {
        foreach (var key in keys)
            Press(key);
        _pressed -= keys.Length - 1;
    }

    private async Task<Session> Now() => (await bay.Bay.Daemon.Ask(o => bay.Bay.Daemon.WorkSessions.GetSessionAsync(new GetSessionRequest(), o), Cancel)).Session ?? new Session();

    private async Task<Session> Until(Func<Session, bool> fits)
    {
        for (var tries = 0; ; tries++)
        {
            var session = await Now();
            if (session.Id.Length > 0 && fits(session))
                return session;
            Assert.True(tries < 300, $"The session does not come there: {session.State}, {session.Next} {string.Join(' ', session.Findings.Select(f => f.Message))}");
            await Task.Delay(100, Cancel);
        }
    }
}
