using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Calibration;

/// <summary>Says what happens to a calibration procedure, each thing once, in lines of text or of JSON.</summary>
internal sealed class ProcedureTelling(Shell shell, bool json)
{
    private string? _procedure;
    private int _points;
    private uint _step;
    private string? _waiting;
    private string? _trouble;

    /// <summary>What is new in this view.</summary>
    public void Tell(Judged<ProcedureView> view)
    {
        if (view.Trouble?.Code is var trouble && trouble != _trouble && view.Trouble is { } wrong)
            Say("trouble", shell.Glyphs.Tell(wrong), trouble: wrong);
        _trouble = trouble;
        if (view.Message is not { } procedure || !view.IsNew || procedure.State == ProcedureState.None)
            return;
        if (procedure.ProcedureId != _procedure)
            Begin(procedure);
        Points(procedure);
        Step(procedure);
    }

    /// <summary>A request was refused; what was tried automatically may fail in passing without a word.</summary>
    public void Refused(Diagnostic trouble, bool isOrder)
    {
        if (isOrder || !ProcedureWords.IsPassing(trouble.Code))
            Say("refused", shell.Glyphs.Tell(trouble), trouble: trouble);
    }

    /// <summary>The outcome.</summary>
    public void Result(ProcedureView procedure)
    {
        if (json)
            shell.WriteJson(ProcedureEventJson.Of("result", procedure), ProcedureTexts.Default.ProcedureEventJson);
        else
            foreach (var line in ResultLines.Of(procedure.Result, shell.Glyphs))
                shell.WriteLine(line);
    }

    /// <summary>Adopted or rejected.</summary>
    public void Ended(ProcedureView procedure) => Say("ended", $"{ProcedureWords.State(procedure.State)}: calibration procedure {procedure.ProcedureId} of {PeerText.Clean(procedure.SerialNumber, 40)}"
        + (procedure.State == ProcedureState.Adopted ? $", calibration No. {PeerText.Clean(procedure.ProcedureId, 10)} is in effect" : ", the calibration before stays in effect"), procedure);

    /// <summary>The user leaves while it goes on.</summary>
    public void Left(ProcedureView? procedure, Corner corner)
    {
        if (ProcedureWords.Resume(procedure, corner) is { Length: > 0 } how)
            Say("left", how, procedure);
    }

    /// <summary>Nobody said what to do with it.</summary>
    public void Undecided(ProcedureView procedure) => Say("undecided", $"{ProcedureWords.Resume(procedure, procedure.Corner)} --adopt, or --reject REASON", procedure);

    private void Begin(ProcedureView procedure)
    {
        (_procedure, _points, _step, _waiting) = (procedure.ProcedureId, procedure.Points.Count, 0, null);
        foreach (var caution in procedure.Cautions)
            Say("caution", $"Caution: {PeerText.Clean(caution, 200)}");
        if (procedure.Forecast is { } forecast)
            Say("plan", ForecastLines.Of(forecast, procedure.HasLiftsLeft ? (procedure.LiftsLeft, procedure.LiftedLeftKg) : null, shell.Glyphs), procedure);
        Say("procedure", $"calibration procedure {procedure.ProcedureId} of {procedure.Corner.Name()}, pad {PeerText.Clean(procedure.SerialNumber, 40)}: {(procedure.Points.Count > 0 ? $"taken up with {procedure.Points.Count} points" : "begun")}", procedure);
    }

    private void Points(ProcedureView procedure)
    {
        foreach (var point in procedure.Points.Skip(_points))
            if (json)
                shell.WriteJson(ProcedureEventJson.Of("recorded", procedure) with { Point = ProcedurePointJson.Of(point) }, ProcedureTexts.Default.ProcedureEventJson);
            else
                shell.WriteLine($"  recorded: {ProcedureWords.Point(point, shell.Glyphs)}");
        if (procedure.Points.Count != _points)
            _step = 0;
        _points = procedure.Points.Count;
    }

    private void Step(ProcedureView procedure)
    {
        if (procedure.Step is not { } step)
            return;
        if (step.Number != _step)
        {
            (_step, _waiting) = (step.Number, null);
            Say("step", $"{step.Number}/{step.Of} {ProcedureWords.Part(step.Stage, step.Repetition, step.WayDown)}: {ProcedureWords.Order(step)}{(step.Untold ? ", then say so with Enter" : "")}", procedure);
        }

        var waiting = procedure.WaitingFor?.Code is { } code && !ProcedureWords.IsPassing(Code.Read(code)) ? code : null;
        if (waiting is not null && waiting != _waiting)
            Say("waiting", shell.Glyphs.Tell(DiagnosticReader.Read(procedure.WaitingFor!)), procedure, DiagnosticReader.Read(procedure.WaitingFor!));
        _waiting = waiting;
    }

    private void Say(string what, string text, ProcedureView? procedure = null, Diagnostic? trouble = null)
    {
        if (json)
            shell.WriteJson(ProcedureEventJson.Of(what, procedure) with { Says = trouble is null ? text : null, Trouble = trouble }, ProcedureTexts.Default.ProcedureEventJson);
        else
            shell.WriteLine(text);
    }
}
