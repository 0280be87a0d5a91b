using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Calibration;
using ScaleLink.Client.Runtime;
using Shared;

namespace Client.Tests.Calibration;

/// <summary>The page at the smallest terminal, 80 columns and 24 rows, without colour.</summary>
public class ProcedurePageTests
{
    [Fact]
    public void A_step_that_rests_and_is_ready() => Approve("ready", Readouts.Live(Procedure()));

    [Fact]
    public void A_load_that_does_not_fit_says_why_and_what_to_do()
    {
        var procedure = Procedure();
        (procedure.Ready, procedure.Reading.Settling, procedure.Reading.Settled) = (false, 0.4, false);
        procedure.WaitingFor = new ScaleLink.Api.V1.Diagnostic { Code = "SL-304", Message = "The masses stand on another pad: +100.2 kg came on RF, the calibration procedure is of LF.", Remedy = "Move them to the pad that is being calibrated." };
        Approve("waiting", Readouts.Live(procedure));
    }

    [Fact]
    public void Before_the_first_masses_are_lifted_the_cautions_stand_there()
    {
        var procedure = Procedure();
        procedure.Points.Clear();
        (procedure.Ready, procedure.Step.Stage, procedure.Step.Words) = (false, ProcedureStage.Preload, "put on 50 A + 50 B + 50 C + 50 D");
        procedure.Forecast = new PlanForecast { Steps = 10, Loads = 3, HighestKg = 400, Lifts = 32, LiftedKg = 1600, Foreseen = { new ForeseenUncertainty { LoadKg = 400, ExpandedKg = 0.304 } } };
        (procedure.LiftsLeft, procedure.LiftedLeftKg) = (32, 1600);
        procedure.Cautions.AddRange(ScaleLink.Weighing.Calibration.Flow.ProcedureCautions.All);
        procedure.WaitingFor = new ScaleLink.Api.V1.Diagnostic { Code = "SL-305", Message = "The load has not changed since the last point: +200 kg was to come, +0.0 kg came.", Remedy = "Place what the step asks for, then take the reading." };
        Approve("cautions", Readouts.Live(procedure));
    }

    [Fact]
    public void A_load_over_one_cell_shows_which_cell_carries_it()
    {
        var procedure = Procedure();
        procedure.Points.Clear();
        (procedure.Step.Stage, procedure.Step.Words, procedure.Step.Spot, procedure.Step.Untold, procedure.Step.ChangeKg) = (ProcedureStage.CornerLoad, "move the load, over cell 2", "over cell 2", true, 0);
        procedure.Reading.CellShares.AddRange([0.2, 0.7, 0.04, 0.06]);
        Approve("corner-load", Readouts.Live(procedure));
    }

    [Fact]
    public void The_outcome_before_it_is_decided()
    {
        var procedure = Procedure();
        (procedure.State, procedure.Step, procedure.Reading) = (ProcedureState.Review, null, null);
        procedure.Result = Result();
        Approve("review", Readouts.Live(procedure));
        Approve("review-pounds", Readouts.Live(procedure), glyphs: Glyphs.Rich with { Units = ScaleLink.Measure.Units.PoundInch });
    }

    [Fact]
    public void A_daemon_that_is_away_takes_nothing_with_it()
    {
        var held = Readouts.Held(Procedure(), 4) with { Trouble = new Diagnostic(Code.Read("SL-420"), "No daemon answers at http://127.0.0.1:5481.", "Start the daemon, or give its address with --daemon.") };
        Approve("away", held);
    }

    [Fact]
    public void Words_of_a_pad_cannot_steer_the_terminal()
    {
        var procedure = Procedure();
        (procedure.SerialNumber, procedure.Step.Words) = ("\e[2J\e[31mred", "put on \e]0;x\a20 A");
        Assert.DoesNotContain(ProcedurePage.Draw(Readouts.Live(procedure), new ProcedurePageState(false, "", null), (80, 24), Glyphs.Plain).ToLines(hasColour: false), line => line.Contains("\e[2J") || line.Contains("\e]") || line.Contains('\a'));
    }

    [Fact]
    public void On_a_tall_terminal_the_residuals_stand_between_the_limits_and_within_the_band()
    {
        var procedure = Procedure();
        (procedure.State, procedure.Step, procedure.Reading) = (ProcedureState.Review, null, null);
        procedure.Result = Result();
        Approve("review-tall", Readouts.Live(procedure), rows: 40);
    }

    [Fact]
    public void A_pad_that_does_not_look_empty_offers_to_say_why_it_is()
    {
        var procedure = Procedure();
        procedure.Points.Clear();
        (procedure.Ready, procedure.Step.Words, procedure.Step.LoadKg, procedure.Step.ChangeKg) = (false, "leave the pad empty", 0, 0);
        procedure.Step.Load.Masses.Clear();
        procedure.WaitingFor = new ScaleLink.Api.V1.Diagnostic { Code = "SL-318", Message = "The pad is not empty, or its zero has moved far: it carries +20.1 kg against the empty pad as it was known before.", Remedy = "Take everything off the pad." };
        Approve("not-empty", Readouts.Live(procedure));
    }

    private static void Approve(string name, Judged<ProcedureView> view, int rows = 24, Glyphs? glyphs = null)
    {
        var canvas = ProcedurePage.Draw(view, new ProcedurePageState(true, "", null), (80, rows), glyphs ?? Glyphs.Rich);
        var lines = canvas.ToLines(hasColour: false).Select(line => System.Text.RegularExpressions.Regex.Replace(line, "\e\\[[0-9]*m", "").TrimEnd());
        Assert.All(lines, line => Assert.True(line.Length <= 80));
        Approved.Matches(string.Join('\n', lines), "tests", "Client.Tests", "Calibration", $"procedure-{name}.approved.txt");
    }

    private static ProcedureView Procedure()
    {
        var procedure = new ProcedureView
        {
            Stamp = Readouts.Stamp(), Corner = Corner.Lf, SerialNumber = "SLP-1001", State = ProcedureState.Measuring, ProcedureId = "17", Ready = true,
            Step = new ProcedureStep
            {
                Number = 12, Of = 40, Stage = ProcedureStage.Repetitions, Words = "put on 50 C + 50 D", Load = new LoadStack { Masses = { "50 A", "50 B", "50 C", "50 D" } },
                LoadKg = 200, ChangeKg = 100, Repetition = 2, SettlingS = 20,
            },
            Reading = new ProcedureReading { LoadKg = 200.37, Settling = 1, Settled = true },
        };
        (double Kg, double Residual, bool Down)[] points = [(0, 0.012, false), (100, -0.041, false), (200, 0.02, false), (300, 0.035, false), (200, 0.061, true), (100, 0.03, true), (0, -0.02, true)];
        foreach (var (kg, residual, down) in points)
            procedure.Points.Add(new ProcedurePoint { LoadKg = kg, ResidualKg = residual, WayDown = down, Repetition = 1, Stage = ProcedureStage.Repetitions, Load = new LoadStack(), ReadKg = kg - residual });
        return procedure;
    }

    private static ProcedureResult Result()
    {
        var result = new ProcedureResult
        {
            Before = new CalibrationSummary { SpanKgPerCount = 0.0005 },
            Calibration = new CalibrationSummary { Id = new string('a', 64), SpanKgPerCount = 0.000499186, CalibratedToKg = 300, ExpandedUncertaintyKg = 0.186 },
            CurveOrder = 1,
            Conclusion = "Good to 300 kg within ±0.19 kg (95 %); from now on such a load reads -0.48 kg against before.",
            ErrorLimits = { new ErrorLimit { UpToKg = 100, LimitKg = 0.1 }, new ErrorLimit { UpToKg = 300, LimitKg = 0.2 } },
            AccuracyClass = "inside class III limits for e = 0.2 kg up to 300 kg: yes, worst point error +0.077 kg of ±0.100 kg at 100 kg",
            NotCovered = { "repeatability" }, TakenAsUsual = { "creep", "position", "temperature" },
            Shifts = { new Shift { What = "span", Kg = 0.412, ExpandedKg = 0.21 } },
            Budgets = { new LoadBudget { LoadKg = 300, Terms = { new BudgetTerm { Name = "linearity", StandardUncertaintyKg = 0.06 }, new BudgetTerm { Name = "hysteresis", StandardUncertaintyKg = 0.046 } } } },
        };
        (result.Budgets[0].ExpandedKg, var before) = (0.186, new LoadBudget { LoadKg = 60, ExpandedKg = 0.06 });
        result.Budgets.Insert(0, before);
        foreach (var kg in (double[])[60, 120, 180, 240, 300])
            result.BeforeAfter.Add(new BeforeAfter { BeforeKg = kg * 1.0016, NowKg = kg, NowExpandedKg = 0.15 + kg / 10000 });
        return result;
    }
}
