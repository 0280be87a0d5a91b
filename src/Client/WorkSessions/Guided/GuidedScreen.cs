using ScaleLink.Api.V1;
using ScaleLink.Client.Age;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.WorkSessions.Guided;

/// <summary>Guides through a work session on a terminal, one key a step. Leaving keeps the session.</summary>
internal sealed class GuidedScreen(Shell shell, DaemonConnection daemon, string who)
{
    private const int LongestAnswer = 80;

    // No message is on its way for longer.
    private static readonly TimeSpan UnderWay = TimeSpan.FromSeconds(2);

    private readonly GuidedSteps _steps = new(daemon, who, shell.Glyphs.Units);
    private readonly TypedLine _line = new(LongestAnswer);
    private volatile Judged<Loads>? _loads;
    private Offer? _asking;
    private string _message = "";
    private bool _isWaiting, _isLeaving, _tellsCautions;
    private Session? _last, _answer;
    private long _answeredAt;

    // A rest that was weighed already, or was not one for the record: the next one is waited for.
    private bool _hasToMove;

    /// <summary>Runs until the user leaves; gives the session as it was last seen.</summary>
    public async Task<Session?> Run(CancellationToken stop)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var following = Follow(end.Token);
        try
        {
            using var screen = new LineScreen(shell);
            await foreach (var view in new SessionFeed(daemon).WithCancellation(stop))
            {
                var now = Newest(view);
                _last = now.Message?.Session ?? _last;
                await Keys(State(now), stop);
                await WeighWhenSettled(State(now), stop);
                if (_isLeaving)
                    break;
                screen.Show(GuidedPage.Lines(State(Newest(view)), shell, screen.Size));
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Leaving is no end of the session.
        }
        finally
        {
            await end.CancelAsync();
            await following.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        return _last;
    }

    // The answer to a step is newer than a message that was on its way when it came: a key pressed next means what comes after the step.
    private Judged<GetSessionResponse> Newest(Judged<GetSessionResponse> view)
    {
        if (_answer is not { } answer || view.Message is not { } message)
            return view;
        if (shell.Time.GetElapsedTime(_answeredAt) > UnderWay || (message.Session is { } told ? told.Id != answer.Id || told.Entry >= answer.Entry : answer.Ending.Length > 0))
        {
            _answer = null;
            return view;
        }

        return view with { Message = new GetSessionResponse(message) { Session = answer.Ending.Length > 0 ? null : answer } };
    }

    private GuidedState State(Judged<GetSessionResponse> view) => new(view, _loads, _isWaiting, _message, _line.Question) { Who = who, TellsCautions = _tellsCautions, Units = shell.Glyphs.Units };

    private async Task Follow(CancellationToken stop)
    {
        await foreach (var view in new LoadsFeed(daemon).WithCancellation(stop))
            _loads = view;
    }

    private async Task Keys(GuidedState state, CancellationToken stop)
    {
        // One step a look at the session: what a key means depends on what the step before has made of it.
        while (shell.Key() is { } key)
        {
            if (_line.IsAsked)
            {
                if (_line.Type(key) is { } text)
                {
                    await Take(_asking!, state.Open, text, stop);
                    return;
                }
            }
            else if (state.Keys.FirstOrDefault(o => o.Key == (key.Key == ConsoleKey.Enter ? Offer.Enter : char.ToLowerInvariant(key.KeyChar))) is { } offer)
            {
                await Choose(offer, state.Open, stop);
                return;
            }
        }
    }

    private Task Choose(Offer offer, Session? session, CancellationToken stop)
    {
        (_message, _asking) = ("", offer);
        switch (offer)
        {
            case { Act: Act.Leave }:
                _isLeaving = true;
                return Task.CompletedTask;
            case { Act: Act.TellCautions }:
                _tellsCautions = !_tellsCautions;
                return Task.CompletedTask;
            case { Act: Act.Weigh }:
                (_isWaiting, _hasToMove) = (!_isWaiting, false);
                return Task.CompletedTask;
            case { Question.Length: > 0 }:
                _line.Ask(PeerText.Clean(offer.Question, LongestAnswer));
                return Task.CompletedTask;
            default:
                return Take(offer, session, offer.Value, stop);
        }
    }

    private async Task WeighWhenSettled(GuidedState state, CancellationToken stop)
    {
        if (!_isWaiting || state.Session.Freshness != Measure.Age.Freshness.Live)
            return;
        if (state.Live is not { WeighingReady: true })
            _hasToMove = false;
        else if (!_hasToMove)
            await Take(new(Offer.Enter, "", Act.Weigh), state.Open, "", stop);
    }

    private async Task Take(Offer offer, Session? session, string text, CancellationToken stop)
    {
        try
        {
            var after = await _steps.Take(offer, session, text, stop);
            // One that has ended is not in the bay any more.
            (_isWaiting, _message, _last, _answer, _answeredAt) = (false, Told(offer, session, after, text), after, after, shell.Time.GetTimestamp());
        }
        catch (ClientException e)
        {
            _message = shell.Glyphs.Tell(e.Diagnostic);
            _hasToMove = true;
            _isWaiting &= offer.Act == Act.Weigh && (e.Diagnostic.Code == SessionCodes.SameRest || e.Diagnostic.Code == SessionCodes.NotReady);
        }
    }

    // What was just done, so that a key pressed twice shows.
    private static string Told(Offer offer, Session? before, Session after, string text) => offer.Act switch
    {
        Act.Tick or Act.LeaveOut when before is not null && Offers.Next(before.State == SessionState.Preparing ? before.Preparation : before.LastSteps) is { } check =>
            $"{(offer.Act == Act.Tick ? "Done" : "Left out")}: {PeerText.Clean(check.Title, 60)}{(text.Length > 0 ? $" ({PeerText.Clean(text, 60)})" : "")}",
        Act.TickRest => "Ticked together: not individually confirmed.",
        Act.Weigh => $"Weighed: reading {after.Weighings[^1].Number}.",
        Act.AsPlanned or Act.One or Act.Turned when after.OpenAdjustments is [.., var turned] => $"On record: {PeerText.Clean(turned.Words, 80)}",
        Act.Undo => "Taken back.",
        Act.Finish or Act.Abandon => $"{PeerText.Clean(after.Ending, 200)} Sheet: scalelink work-session export {PeerText.Clean(after.Id, 24)}",
        _ => "",
    };
}
