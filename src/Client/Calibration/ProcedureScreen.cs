using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Calibration;

/// <summary>Guides through a calibration procedure on a terminal. Leaving keeps it; the message at the end says how to go on.</summary>
internal sealed class ProcedureScreen(Shell shell, DaemonConnection daemon, ProcedureCalls work, string note)
{
    private const int LongestReason = 60;
    private readonly TypedLine _reason = new(LongestReason);
    private bool _automatic;
    private string _message = "";
    private bool _isRefused;
    // The step that a reason is typed for; nothing when it is for a rejection.
    private uint? _emptyStep;
    private (uint Step, int Points)? _sent;

    /// <summary>Runs until the calibration procedure has ended, or the user leaves.</summary>
    public async Task<int> Run(ProcedureView first, CancellationToken stop)
    {
        foreach (var caution in first.Cautions)
            shell.WriteLine($"Caution: {PeerText.Clean(caution, 200)}");
        var last = first;
        try
        {
            using var screen = new LineScreen(shell);
            await foreach (var view in new ProcedureFeed(daemon, work.Corner).WithCancellation(stop))
            {
                last = view.Message ?? last;
                // An answer to a key that things have overtaken would be read as if it held still.
                if (_isRefused && last.Ready)
                    (_message, _isRefused) = ("", false);
                await Keys(view, stop);
                await Automatic(view, stop);
                screen.Show(ProcedurePage.Draw(view, new ProcedurePageState(_automatic, _message, _reason.Question), screen.Size, shell.Glyphs).ToLines(shell.HasColour));
                if (view is { IsNew: true, Message.State: ProcedureState.Adopted or ProcedureState.Rejected or ProcedureState.Abandoned })
                    break;
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Leaving is no end of the calibration procedure.
        }

        shell.WriteLine(last.State switch
        {
            ProcedureState.Adopted => $"Adopted: calibration No. {PeerText.Clean(last.ProcedureId, 20)} is in effect. Report: scalelink calibrations export {PeerText.Clean(last.ProcedureId, 20)}",
            ProcedureState.Rejected or ProcedureState.Abandoned => "Not adopted: the calibration before stays in effect.",
            _ => ProcedureWords.Resume(last, work.Corner),
        });
        return ExitCodes.Done;
    }

    private async Task Keys(Judged<ProcedureView> view, CancellationToken stop)
    {
        while (shell.Key() is { } key)
        {
            if (_reason.IsAsked)
            {
                if (_reason.Type(key) is { } reason)
                    await Try(() => _emptyStep is { } step ? work.Record(step, stop, reason) : work.Reject(reason, stop));
            }
            else if (view is { Freshness: Freshness.Live, Message: { } procedure })
            {
                await Press(key, procedure, stop);
            }
        }
    }

    private Task Press(ConsoleKeyInfo key, ProcedureView procedure, CancellationToken stop) => (key.Key, procedure.State, procedure.Step) switch
    {
        (ConsoleKey.A, ProcedureState.Measuring, _) => Task.FromResult(_automatic = !_automatic),
        (ConsoleKey.Enter, ProcedureState.Measuring, { } step) => Try(() => work.Record(step.Number, stop)),
        (ConsoleKey.S, ProcedureState.Measuring, { } step) => Try(() => work.Skip(step.Number, stop)),
        (ConsoleKey.R, ProcedureState.Measuring, { Stage: ProcedureStage.Repetitions } step) => Try(() => work.Repeat(step.Repetition, stop)),
        (ConsoleKey.E, ProcedureState.Measuring, { } step) when ProcedureWords.IsSaidToBeEmpty(procedure) => AskWhy("It is empty although it reads so, because", step.Number),
        (ConsoleKey.F, ProcedureState.Measuring, _) => Try(() => work.Finish(stop)),
        (ConsoleKey.B, _, _) => Try(() => work.Repeat(null, stop)),
        (ConsoleKey.Y, ProcedureState.Review, _) => Try(() => work.Adopt(note, stop)),
        (ConsoleKey.N, ProcedureState.Review, _) => AskWhy("Why is it rejected?", null),
        _ => Task.CompletedTask,
    };

    private Task AskWhy(string question, uint? emptyStep)
    {
        _emptyStep = emptyStep;
        _reason.Ask(question);
        return Task.CompletedTask;
    }

    private async Task Automatic(Judged<ProcedureView> view, CancellationToken stop)
    {
        if (!_automatic || view is not { Freshness: Freshness.Live, Message: { Ready: true, Step: { Untold: false } step } procedure } || _sent == (step.Number, procedure.Points.Count))
            return;
        _sent = (step.Number, procedure.Points.Count);
        await Try(() => work.Record(step.Number, stop));
    }

    private async Task Try(Func<Task<ProcedureView>> ask)
    {
        try
        {
            var view = await ask();
            _isRefused = false;
            _message = view.Points.Count > 0 && view.State == ProcedureState.Measuring ? $"Last point: {ProcedureWords.Point(view.Points[^1], shell.Glyphs)}" : "";
        }
        catch (ClientException e)
        {
            _sent = null;
            (_message, _isRefused) = (shell.Glyphs.Tell(e.Diagnostic), true);
        }
    }
}
