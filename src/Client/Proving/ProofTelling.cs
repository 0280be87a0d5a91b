using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Proving;

/// <summary>Says what happens to a proof, each thing once, in lines of text or of JSON.</summary>
internal sealed class ProofTelling(Shell shell, bool json)
{
    private string? _proof;
    private int _points;
    private uint _step;
    private string? _waiting;
    private string? _trouble;

    /// <summary>What is new in this view.</summary>
    public void Tell(Judged<ProofView> view)
    {
        if (view.Trouble?.Code is var trouble && trouble != _trouble && view.Trouble is { } wrong)
            Say("trouble", wrong.ToString(), trouble: wrong);
        _trouble = trouble;
        if (view.Message is not { } proof || !view.IsNew || proof.State == ProofState.None)
            return;
        if (proof.ProofId != _proof)
            Begin(proof);
        Points(proof);
        Step(proof);
    }

    /// <summary>A request was refused; what was tried automatically may fail in passing without a word.</summary>
    public void Refused(Diagnostic trouble, bool isOrder)
    {
        if (isOrder || !ProofWords.IsPassing(trouble.Code))
            Say("refused", trouble.ToString(), trouble: trouble);
    }

    /// <summary>The outcome.</summary>
    public void Result(ProofView proof)
    {
        if (json)
            shell.WriteJson(ProofEventJson.Of("result", proof), ProofTexts.Default.ProofEventJson);
        else
            foreach (var line in ResultLines.Of(proof.Result, shell.Glyphs))
                shell.WriteLine(line);
    }

    /// <summary>Adopted or rejected.</summary>
    public void Ended(ProofView proof) => Say("ended", $"{ProofWords.State(proof.State)}: proof {proof.ProofId} of {PeerText.Clean(proof.SerialNumber, 40)}"
        + (proof.State == ProofState.Adopted ? $", calibration {ResultLines.Short(proof.Ending.CalibrationId)} is in force" : ", the calibration before stays in force"), proof);

    /// <summary>The user leaves while it goes on.</summary>
    public void Left(ProofView? proof, Corner corner)
    {
        if (ProofWords.Resume(proof, corner) is { Length: > 0 } how)
            Say("left", how, proof);
    }

    /// <summary>Nobody said what to do with it.</summary>
    public void Undecided(ProofView proof) => Say("undecided", $"{ProofWords.Resume(proof, proof.Corner)} --adopt, or --reject REASON", proof);

    private void Begin(ProofView proof)
    {
        (_proof, _points, _step, _waiting) = (proof.ProofId, proof.Points.Count, 0, null);
        foreach (var caution in proof.Cautions)
            Say("caution", $"Caution: {PeerText.Clean(caution, 200)}");
        Say("proof", $"proof {proof.ProofId} of {proof.Corner.Name()}, pad {PeerText.Clean(proof.SerialNumber, 40)}: {(proof.Points.Count > 0 ? $"taken up with {proof.Points.Count} points" : "begun")}", proof);
    }

    private void Points(ProofView proof)
    {
        foreach (var point in proof.Points.Skip(_points))
            if (json)
                shell.WriteJson(ProofEventJson.Of("recorded", proof) with { Point = ProofPointJson.Of(point) }, ProofTexts.Default.ProofEventJson);
            else
                shell.WriteLine($"  recorded: {ProofWords.Point(point)}");
        if (proof.Points.Count != _points)
            _step = 0;
        _points = proof.Points.Count;
    }

    private void Step(ProofView proof)
    {
        if (proof.Step is not { } step)
            return;
        if (step.Number != _step)
        {
            (_step, _waiting) = (step.Number, null);
            Say("step", $"{step.Number}/{step.Of} {ProofWords.Part(step.Stage, step.Run, step.WayDown)}: {ProofWords.Order(step)}{(step.Untold ? ", then say so with Enter" : "")}", proof);
        }

        var waiting = proof.WaitingFor?.Code is { } code && !ProofWords.IsPassing(Code.Read(code)) ? code : null;
        if (waiting is not null && waiting != _waiting)
            Say("waiting", DiagnosticReader.Read(proof.WaitingFor!).ToString(), proof, DiagnosticReader.Read(proof.WaitingFor!));
        _waiting = waiting;
    }

    private void Say(string what, string text, ProofView? proof = null, Diagnostic? trouble = null)
    {
        if (json)
            shell.WriteJson(ProofEventJson.Of(what, proof) with { Says = trouble is null ? text : null, Trouble = trouble }, ProofTexts.Default.ProofEventJson);
        else
            shell.WriteLine(text);
    }
}
