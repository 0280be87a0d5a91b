using Client.Tests.Terminal;
using ScaleLink.Api.V1;
using ScaleLink.Client.WorkSessions;
using Shared;

namespace Client.Tests.WorkSessions;

/// <summary>The work session on an 80 by 24 terminal, as a picture that was looked at and approved.</summary>
public class SessionPageTests
{
    [Fact]
    public void While_perches_are_to_be_turned() => Matches(Turning(), "session-turn.approved.txt");

    [Fact]
    public void In_preparation()
    {
        var session = Bare(SessionState.Preparing, "Preparation: fuel as raced.");
        session.Preparation.Add(new Check { Key = "tyre_pressures", Title = "Tyre pressures set", Done = true });
        session.Preparation.Add(new Check { Key = "fuel", Title = "Fuel as raced" });
        session.Preparation.Add(new Check { Key = "patch_level", Title = "Patch level" });
        Matches(session, "session-preparation.approved.txt");
    }

    [Fact]
    public void An_advice_at_a_check_that_is_seen_to_is_told_on_the_page_and_in_the_answer_to_a_step()
    {
        var session = Bare(SessionState.Preparing, "Preparation: fuel as raced.");
        session.Preparation.Add(new Check { Key = "pads_zeroed", Done = true, Findings = { new ScaleLink.Api.V1.Diagnostic { Code = "SL-595", Message = "Never tested: RF.", Remedy = "Turn the pad." } } });
        Assert.Contains(SessionPage.Lines(session, Shells.Redirected(), (80, 24)), l => l.Contains("SL-595"));
        Assert.Contains(SessionPage.Short(session, Shells.Redirected().Glyphs), l => l.Contains("SL-595"));
    }

    [Fact]
    public void A_reading_on_record_tells_what_was_corrected()
    {
        var session = Turning();
        session.Weighings[0].Patch.Add(new PatchInReading { Name = "slope", SizeKg = new CornerNumbers { Lf = 0.5, Rf = -0.5 } });
        session.Weighings[0].Patch.Add(new PatchInReading { Name = "warp" });
        Assert.Contains("     patch: slope 0.5 kg, warp REFUSED", RecordsPage.Show(session, Shells.Redirected().Glyphs));
    }

    [Fact]
    public void Nothing_is_wider_than_the_terminal_or_longer()
    {
        var session = Turning();
        session.Next = string.Join(' ', Enumerable.Repeat("very long words", 40));
        var lines = SessionPage.Lines(session, Shells.Terminal(new StringWriter(), hasColour: false), (80, 24));
        Assert.InRange(lines.Count, 10, 24);
    }

    [Fact]
    public void Text_from_the_daemon_is_cleaned()
    {
        var session = Turning();
        session.Next = "turn \e[31mLR";
        Assert.DoesNotContain(SessionPage.Lines(session, Shells.Redirected(), (80, 24)), l => l.Contains('\e'));
    }

    [Fact]
    public void Turning_in_pounds() => Matches(Turning(), "session-turn-pounds.approved.txt", Shells.Pounds());

    private static void Matches(Session session, string file, ScaleLink.Client.Runtime.Shell? shell = null)
    {
        var lines = SessionPage.Lines(session, shell ?? Shells.Redirected(), (80, 24));
        Assert.All(lines, l => Assert.InRange(l.Length, 0, 80));
        Approved.Matches(string.Join('\n', lines), "tests", "Client.Tests", "WorkSessions", file);
    }

    private static Session Bare(SessionState state, string next) => new()
    {
        Id = "20260502-091500", Car = "Heron", Bay = "unit6", State = state, Next = next, TargetCrossWeightPercent = 50, TargetTolerancePercent = 0.2,
        CautionLine = ScaleLink.Weighing.Balance.Cautions.PerchesLine, CautionsRead = { new CautionsRead { Who = "Ada" } },
    };

    private static Session Turning()
    {
        var session = Bare(SessionState.Planning, "LR up ¼ turn, RF up ¼: then settle.");
        session.Standing = new Standing { Words = "below target: 49.6 % ± 0.3 % (95 %, Student t, 1 settle)", Verdict = AimVerdict.Low };
        session.Trace.Add(new TracePoint { Step = 0, CrossWeightPercent = 52.05 });
        session.Trace.Add(new TracePoint { Number = 1, Step = 1, CrossWeightPercent = 49.62, PredictedPercent = new MeasuredValue { Estimate = 49.98, StandardUncertainty = 0.2 }, Label = "RF down 1¼" });
        session.Weighings.Add(new WeighingRecord { Number = 1, Loads = new LoadFigures { LoadsKg = Four(270.1, 276.3, 243.4, 258.2), TotalKg = Of(1048, 0.5), CrossWeightPercent = Of(49.62, 0.05) } });
        session.Plan = new PerchPlan { Words = "LR up ¼ turn, RF up ¼", Predicted = new Prediction { CrossWeightPercent = Of(50.02, 0.12) } };
        session.Plan.Findings.Add(new ScaleLink.Api.V1.Diagnostic { Code = "SL-544", Message = "The car has ride height limits, but no ride heights were measured.", Remedy = "Measure all four, or watch the limits yourself: the plan does not." });
        session.BackToBaselineWords = "RF up 1¼ turns";
        return session;
    }

    private static CornerValues Four(double lf, double rf, double lr, double rr) => new() { Lf = Of(lf, 0.2), Rf = Of(rf, 0.2), Lr = Of(lr, 0.2), Rr = Of(rr, 0.2) };

    private static MeasuredValue Of(double value, double u) => new() { Estimate = value, StandardUncertainty = u };
}
