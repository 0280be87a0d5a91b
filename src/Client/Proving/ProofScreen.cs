using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Proving;

/// <summary>Guides through a proof on a terminal. Leaving keeps it; the message at the end says how to go on.</summary>
internal sealed class ProofScreen(Shell shell, DaemonConnection daemon, ProofWork work, string note)
{
    private readonly TypedReason _reason = new();
    private bool _automatic;
    private string _message = "";
    private bool _isRefused;
    private (uint Step, int Points)? _sent;

    /// <summary>Runs until the proof has ended, or the user leaves.</summary>
    public async Task<int> Run(ProofView first, CancellationToken stop)
    {
        foreach (var caution in first.Cautions)
            shell.WriteLine($"Caution: {PeerText.Clean(caution, 200)}");
        var last = first;
        try
        {
            using var screen = new LineScreen(shell);
            await foreach (var view in new ProofFeed(daemon, work.Corner).WithCancellation(stop))
            {
                last = view.Message ?? last;
                // An answer to a key that things have overtaken would be read as if it held still.
                if (_isRefused && last.Ready)
                    (_message, _isRefused) = ("", false);
                await Keys(view, stop);
                await Automatic(view, stop);
                screen.Show(ProofPage.Draw(view, new ProofPageState(_automatic, _message, _reason.Question), screen.Size, shell.Glyphs).ToLines(shell.HasColour));
                if (view is { IsNew: true, Message.State: ProofState.Adopted or ProofState.Rejected or ProofState.Abandoned })
                    break;
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Leaving is no end of the proof.
        }

        shell.WriteLine(last.State switch
        {
            ProofState.Adopted => $"Adopted: calibration {ResultLines.Short(last.Ending.CalibrationId)} is in force. Report: scalelink proofs export {PeerText.Clean(last.ProofId, 20)} --html FILE",
            ProofState.Rejected or ProofState.Abandoned => "Not adopted: the calibration before stays in force.",
            _ => ProofWords.Resume(last, work.Corner),
        });
        return ExitCodes.Done;
    }

    private async Task Keys(Judged<ProofView> view, CancellationToken stop)
    {
        while (shell.Key() is { } key)
        {
            if (_reason.IsAsked)
            {
                if (_reason.Type(key) is { } reason)
                    await Try(() => work.Reject(reason, stop));
            }
            else if (view is { Freshness: Freshness.Live, Message: { } proof })
            {
                await Press(key, proof, stop);
            }
        }
    }

    private Task Press(ConsoleKeyInfo key, ProofView proof, CancellationToken stop) => (key.Key, proof.State, proof.Step) switch
    {
        (ConsoleKey.A, ProofState.Measuring, _) => Task.FromResult(_automatic = !_automatic),
        (ConsoleKey.Enter, ProofState.Measuring, { } step) => Try(() => work.Record(step.Number, stop)),
        (ConsoleKey.S, ProofState.Measuring, { } step) => Try(() => work.Skip(step.Number, stop)),
        (ConsoleKey.R, ProofState.Measuring, { Stage: ProofStage.Runs } step) => Try(() => work.Repeat(step.Run, stop)),
        (ConsoleKey.F, ProofState.Measuring, _) => Try(() => work.Finish(stop)),
        (ConsoleKey.B, _, _) => Try(() => work.Repeat(null, stop)),
        (ConsoleKey.Y, ProofState.Review, _) => Try(() => work.Adopt(note, stop)),
        (ConsoleKey.N, ProofState.Review, _) => AskWhy(),
        _ => Task.CompletedTask,
    };

    private Task AskWhy()
    {
        _reason.Ask();
        return Task.CompletedTask;
    }

    private async Task Automatic(Judged<ProofView> view, CancellationToken stop)
    {
        if (!_automatic || view is not { Freshness: Freshness.Live, Message: { Ready: true, Step: { Untold: false } step } proof } || _sent == (step.Number, proof.Points.Count))
            return;
        _sent = (step.Number, proof.Points.Count);
        await Try(() => work.Record(step.Number, stop));
    }

    private async Task Try(Func<Task<ProofView>> ask)
    {
        try
        {
            var view = await ask();
            _isRefused = false;
            _message = view.Points.Count > 0 && view.State == ProofState.Measuring ? $"Last point: {ProofWords.Point(view.Points[^1])}" : "";
        }
        catch (ClientException e)
        {
            _sent = null;
            (_message, _isRefused) = (e.Diagnostic.ToString(), true);
        }
    }
}
