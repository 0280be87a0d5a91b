using Bay.Tests.Asking;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.WorkSessions;

/// <summary>Steps that correct others, and what the session sees for itself, against the real daemon. Common practice, no published source.</summary>
[Trait("needs", "bay")]
public sealed class SessionCallsTests : IDisposable
{
    private readonly BayRig _bay = new("none");
    private readonly CrewAtWork _crew;
    private readonly Calls _calls;

    public SessionCallsTests()
    {
        (_crew, _calls) = (new CrewAtWork(_bay), new Calls(_bay));
        _bay.Zero();
        _crew.ChooseHeron();
        _bay.Daemon.WorkSessionControl.StartSession(new StartSessionRequest { By = CrewAtWork.By });
        // What is missing first is told first: the pads are empty, but the checks are open.
        Assert.Equal("SL-562", _calls.Code(d => d.WorkSessionControl.Weigh(new WeighRequest { By = CrewAtWork.By })));
        _bay.Daemon.WorkSessionControl.AbandonSession(new AbandonSessionRequest { By = CrewAtWork.By });
        _crew.Prepare();
        _bay.Simulator.DoAndWait("""{"do":"lower"}""");
        _crew.SettleAndWeigh();
    }

    public void Dispose() => _bay.Dispose();

    [Fact]
    public void Heights_are_entered_adjustments_undone_surprises_confirmed_and_unnamed_changes_seen()
    {
        Heights();
        Undo();
        Prompt();
        Confirm();
    }

    private void Heights()
    {
        Assert.Equal("SL-569", _calls.Code(d => d.WorkSessionControl.EnterHeights(new EnterHeightsRequest { By = CrewAtWork.By })));
        Assert.Equal("SL-569", _calls.Code(d => d.WorkSessionControl.EnterHeights(new EnterHeightsRequest { By = CrewAtWork.By, HeightsMm = new() { Lf = 110, Rf = double.NaN, Lr = 120, Rr = 120 } })));
        var entered = new CornerNumbers { Lf = 110, Rf = 111, Lr = 120, Rr = 121.5 };
        Assert.Equal(entered, _bay.Daemon.WorkSessionControl.EnterHeights(new EnterHeightsRequest { By = CrewAtWork.By, HeightsMm = entered }).HeightsMm);
        Assert.Equal(entered, _crew.Session.HeightsMm);
    }

    private void Undo()
    {
        Assert.Equal("SL-562", _calls.Code(d => d.WorkSessionControl.UndoAdjustment(new UndoAdjustmentRequest { By = CrewAtWork.By })));
        var before = _crew.Session;
        Record(new() { Lr = 0.5 });
        var two = Record(new() { Rr = -0.25 });
        Assert.Equal(new CornerNumbers { Lr = 0.5, Rr = -0.25 }, two.OpenPrediction.Turns);
        // A plan from the reading before these turns would have them made twice; a prediction counts them in.
        Assert.Equal("SL-562", _calls.Code(d => d.WorkSessions.PlanTurns(new PlanTurnsRequest())));
        Assert.Equal(new CornerNumbers { Rf = 0.125, Lr = 0.5, Rr = -0.25 }, _bay.Daemon.WorkSessions.PredictTurns(new PredictTurnsRequest { Turns = new() { Rf = 0.125 } }).Turns);
        Assert.Equal("SL-569", _calls.Code(d => d.WorkSessions.PredictTurns(new PredictTurnsRequest { Turns = new() { Rf = double.NaN } })));
        Assert.Equal(new CornerNumbers { Lr = 0.5 }, Step(d => d.WorkSessionControl.UndoAdjustment(new UndoAdjustmentRequest { By = CrewAtWork.By })).OpenPrediction.Turns);
        var after = Step(d => d.WorkSessionControl.UndoAdjustment(new UndoAdjustmentRequest { By = CrewAtWork.By }));
        Assert.Equal((SessionState.Planning, 0), (after.State, after.OpenAdjustments.Count));
        Assert.Equal(before.Plan, after.Plan);
        Assert.Equal(before.HeightsMm, after.HeightsMm);
    }

    private void Prompt()
    {
        var before = _crew.Session;
        _crew.Turn(new() { Lr = 1.5 });
        _bay.Simulator.DoAndWait("""{"do":"settle","by":"both","seconds":1.5}""");
        Wait.Until(() => _crew.Session.Findings.Any(f => f.Code == "SL-576"), Wait.Patience, () => $"the change is seen; {_crew.Session} {_bay.Daemon.Loads()}");
        var seen = _crew.Session;
        Assert.Equal((before.Entry, before.Weighings.Count), (seen.Entry, seen.Weighings.Count));
        Assert.Contains("record what was turned", seen.Next);
        Record(new() { Lr = 1.5 });
        Assert.DoesNotContain(_crew.Session.Findings, f => f.Code == "SL-576");
        var settled = _bay.Daemon.WorkSessionControl.Weigh(new WeighRequest { By = CrewAtWork.By });
        Assert.Empty(settled.Findings);
        Assert.Empty(_crew.Session.Findings);
    }

    private void Confirm()
    {
        Assert.Equal("SL-562", _calls.Code(d => d.WorkSessionControl.ConfirmStep(new ConfirmStepRequest { By = CrewAtWork.By })));
        var before = _crew.Session.Weighings[^1].Loads.CrossWeightPercent.Estimate;
        var told = Record(new() { Rf = -1 });
        var truth = Truth();
        // Up and down mixed up: half a percent to the wrong side.
        _crew.Turn(new() { Rf = 1 });
        var moved = Truth() - truth;
        var surprised = _crew.SettleAndWeigh();
        Assert.Equal("SL-550", surprised.Findings[0].Code);
        Assert.True(moved * (told.OpenPrediction.CrossWeightPercent.Estimate - before) < -0.1);
        Assert.Contains(surprised.Weighings[^1].Causes, c => c.Explains);
        var confirmed = Step(d => d.WorkSessionControl.ConfirmStep(new ConfirmStepRequest { By = CrewAtWork.By }));
        Assert.Empty(confirmed.Findings);
        Assert.Equal((true, "SL-550"), (confirmed.Weighings[^1].Answered, confirmed.Weighings[^1].Findings[0].Code));
        Assert.NotEqual(surprised.Plan, confirmed.Plan);
        Assert.Equal("SL-562", _calls.Code(d => d.WorkSessionControl.ConfirmStep(new ConfirmStepRequest { By = CrewAtWork.By })));
    }

    private double Truth() => _bay.Simulator.Do("""{"do":"truth"}""")["cross_weight_pct"]!.GetValue<double>();

    private Session Record(CornerNumbers turns) => Step(d => d.WorkSessionControl.RecordAdjustment(new RecordAdjustmentRequest { By = CrewAtWork.By, Turns = turns }));

    private Session Step(Func<DaemonProcess, Session> step) => step(_bay.Daemon);
}
