using Client.Tests.Terminal;
using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.WorkSessions.Guided;
using ScaleLink.Weighing.Balance;
using Shared;

namespace Client.Tests.WorkSessions.Guided;

/// <summary>The guided session on a terminal of 80 and of 40 columns: pictures that were looked at, and what each key does in each state.</summary>
public class GuidedPageTests
{
    [Theory]
    [InlineData(80, "guided-turn")]
    [InlineData(40, "guided-turn-narrow")]
    public void While_perches_are_turned(int width, string name) => Matches(Turning(), width, name);

    [Fact]
    public void In_preparation_with_the_value_of_last_time() => Matches(Preparing(), 80, "guided-preparation");

    [Fact]
    public void Forty_columns_hold_four_loads_and_the_verdict_without_a_collision()
    {
        var lines = Lines(State(Turning()), 40);
        Assert.All(lines, l => Assert.InRange(l.Length, 0, 40));
        Assert.Contains(lines, l => l.Contains("272.4") && l.Contains("280.1"));
        Assert.Contains(lines, l => l.Contains("high by"));
    }

    [Fact]
    public void What_cannot_be_asked_for_any_more_is_held_and_takes_no_key()
    {
        var state = State(Turning()) with { Session = new() { Freshness = Freshness.Held, Message = new GetSessionResponse { Session = Turning() } } };
        Assert.Empty(state.Keys);
        Assert.Contains(Lines(state, 80), l => l.Contains("HELD"));
    }

    [Fact]
    public void Enter_is_the_next_step_in_every_state()
    {
        Assert.Equal(Act.Start, Enter(null));
        Assert.Equal(Act.Tick, Enter(Preparing()));
        Assert.Equal(Act.Weigh, Enter(new Session { State = SessionState.Baseline, WeighNext = true }));
        Assert.Equal(Act.AsPlanned, Enter(Turning()));
        Assert.Equal(Act.Weigh, Enter(new Session { State = SessionState.Settling, WeighNext = true }));
        Assert.Equal(Act.Weigh, Enter(new Session { State = SessionState.Finishing, WeighNext = true }));
        Assert.Equal(Act.Tick, Enter(new Session { State = SessionState.Finishing, LastSteps = { new Check { Key = "lock_rings" } } }));
        Assert.Equal(Act.Finish, Enter(new Session { State = SessionState.Finishing, Standing = new Standing { Verdict = AimVerdict.OnTarget } }));
        // Where somebody has to decide there is no next step to be hurried through.
        Assert.Null(Enter(new Session { State = SessionState.Naming }));
        Assert.Null(Enter(new Session { State = SessionState.Planning, CanConfirm = true }));
        Assert.Null(Enter(new Session { State = SessionState.Preparing, Preparation = { new Check { Key = "pads_proved", SeenOtherwise = true } } }));
    }

    [Fact]
    public void A_verdict_that_is_not_sure_is_finished_with_a_reason_only()
    {
        var finish = Offers.For(new Session { State = SessionState.Finishing, Standing = new Standing { Verdict = AimVerdict.TooCloseToTell } }, false, ScaleLink.Measure.Units.Metric).Single(o => o.Act == Act.Finish);
        Assert.NotEqual("", finish.Question);
    }

    [Fact]
    public void No_two_offers_have_one_key()
    {
        var surprised = Turning();
        surprised.CanConfirm = true;
        surprised.Weighings.Add(new WeighingRecord { Causes = { new LikelyCause { Words = "as if LF had been turned the other way", Turns = new CornerNumbers { Lf = 1 } }, new LikelyCause { Words = "a bar" } } });
        foreach (var session in (Session?[])[null, Preparing(), Turning(), surprised, new() { State = SessionState.Naming }, new() { State = SessionState.Finishing }])
            foreach (var waits in (bool[])[false, true])
                Assert.Equal(Offers.For(session, waits, ScaleLink.Measure.Units.Metric).Count, Offers.For(session, waits, ScaleLink.Measure.Units.Metric).Select(o => o.Key).Distinct().Count());
        Assert.Equal(Act.PutRight, Offers.For(surprised, false, ScaleLink.Measure.Units.Metric).First(o => o.Key == '1').Act);
    }

    [Theory]
    [InlineData(80)]
    [InlineData(40)]
    public void Whoever_has_not_read_the_cautions_sees_all_of_them_and_one_key(int width)
    {
        var state = State(Turning()) with { Who = "Ben" };
        var lines = Lines(state, width, height: 24);
        var told = string.Join(' ', lines.Select(l => l.Trim()));
        Assert.All(Cautions.OfASession, caution => Assert.Contains(caution, told));
        Assert.Contains("Enter I have read this", told);
        Assert.Equal([Act.ReadCautions, Act.Leave], state.Keys.Select(k => k.Act));
        // Later they are one line, and the whole is a key away.
        Assert.Contains(Lines(State(Turning()), width), l => l.Contains(Cautions.PerchesLine[..20]));
        Assert.All(Cautions.OfASession, caution => Assert.Contains(caution, string.Join(' ', Lines(State(Turning()) with { TellsCautions = true }, width, height: 40).Select(l => l.Trim()))));
    }

    [Theory]
    [InlineData(80, "guided-turn-pounds")]
    [InlineData(40, "guided-turn-narrow-pounds")]
    public void While_perches_are_turned_in_pounds(int width, string name)
    {
        var lines = Lines(State(Turning()), width, shell: Shells.Pounds());
        Assert.All(lines, l => Assert.InRange(l.Length, 0, width));
        Approved.Matches(string.Join('\n', lines), "tests", "Client.Tests", "WorkSessions", "Guided", $"{name}.approved.txt");
    }

    private static Act? Enter(Session? session) => Offers.For(session, isWaiting: false, ScaleLink.Measure.Units.Metric).SingleOrDefault(o => o.Key == Offer.Enter)?.Act;

    private static void Matches(Session session, int width, string name) =>
        Approved.Matches(string.Join('\n', Lines(State(session), width)), "tests", "Client.Tests", "WorkSessions", "Guided", $"{name}.approved.txt");

    private static IReadOnlyList<string> Lines(GuidedState state, int width, int height = 30, ScaleLink.Client.Runtime.Shell? shell = null) => GuidedPage.Lines(state, shell ?? Shells.Redirected(), (width, height));

    private static GuidedState State(Session session) => new(
        new Judged<GetSessionResponse> { Freshness = Freshness.Live, Message = new GetSessionResponse { Session = session } },
        new Judged<Loads> { Freshness = Freshness.Live, Message = Readouts.Settled() }, IsWaiting: false, Message: "", Question: null) { Who = "Ada" };

    private static Session Preparing()
    {
        var session = Bare(SessionState.Preparing, "Preparation: see to it and tick it: fuel as raced.");
        session.Preparation.Add(new Check { Key = "tyre_pressures", Title = "Tyre pressures set", Done = true });
        session.Preparation.Add(new Check { Key = "fuel", Title = "Fuel as raced", Hint = "State how much; a full tank and an empty one stand differently.", Asks = "litres", LastValue = "32" });
        session.Preparation.Add(new Check { Key = "steering_straight", Title = "Steering straight" });
        return session;
    }

    private static Session Turning()
    {
        var session = Bare(SessionState.Planning, "LF up 1⅜ turns, RF down 1½, LR down 1¾.");
        session.Perches.Add(new PerchTurn { Corner = Corner.Lf, Planned = 1.375, Left = 1.375, CanTurn = true });
        session.Perches.Add(new PerchTurn { Corner = Corner.Rf, Planned = -1.5, Done = -1, Left = -0.5, CanTurn = true });
        session.Perches.Add(new PerchTurn { Corner = Corner.Lr, Planned = -1.75, Done = -1.75, CanTurn = true });
        session.Perches.Add(new PerchTurn { Corner = Corner.Rr });
        session.OpenAdjustments.Add(new Adjustment { Words = "LR down 1¾ turns" });
        session.Trace.Add(new TracePoint { CrossWeightPercent = 52.14, ExpandedPercent = 0.3 });
        return session;
    }

    private static Session Bare(SessionState state, string next) => new()
    {
        Id = "20260502-091500", Car = "Heron", Bay = "unit6", State = state, Next = next, TargetCrossWeightPercent = 50, TargetTolerancePercent = 0.2,
        CautionLine = Cautions.PerchesLine, SessionCautions = { Cautions.OfASession }, CautionsRead = { new CautionsRead { Who = "ada" } },
    };
}
