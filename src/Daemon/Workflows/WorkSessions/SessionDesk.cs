using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>The work session in the bay. Each step is in the ledger before it is acknowledged; a restart takes the session up where it was.</summary>
internal sealed class SessionDesk
{
    private readonly SessionLedger _sessions;
    private readonly LiveBay _live;
    private readonly PatchDesk _patch;
    private readonly TimeProvider _time;
    private readonly BayClock _clock;
    private readonly Workflow<WorkSessions> _flow;

    /// <summary>Takes up the open session, if there is one.</summary>
    public SessionDesk(SessionLedger sessions, LiveBay live, PatchDesk patch, TimeProvider time, BayClock clock)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        (_sessions, _live, _patch, _time, _clock, _flow) = (sessions, live, patch, time, clock, sessions.TakeUp());
        _flow.Show(all => all.InTheBay);
    }

    /// <summary>Told after every step; called outside the lock.</summary>
    public event Action? Changed;

    /// <summary>The session in the bay as it stands now; null when none is open.</summary>
    public SessionView? Current => _flow.State.Open is { } session ? View(session) : null;

    /// <summary>The session that the last reading on record belongs to, open or not; null when none was ever taken.</summary>
    public WorkSession? LastWeighed => _flow.State.LastWeighed;

    /// <summary>A session with what the bay sees now.</summary>
    public SessionView View(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        return new(session, session.Baseline is null && session.End is null
            ? BayFacts.Of([.. _live.Pads.Select(p => p.Snapshot())], _live.Newest, _patch.State, session.Car, (_time.GetUtcNow(), _clock.NowNs))
            : new([]));
    }

    /// <summary>Begins a session.</summary>
    public SessionView Begin(SessionStarted start, string who)
    {
        var at = _time.GetUtcNow();
        return Told(_flow.Take(_ => _sessions.NewId(at), all => all.Open is { } open
            ? throw new StepRefusedException(SessionCodes.SessionOpen, $"Session {open.Id} is open in this bay.", "Go on with it, finish it, or abandon it.")
            : SessionLedger.Steps.Entry(at, who, start)));
    }

    /// <summary>Takes one step.</summary>
    /// <param name="id">The session meant; empty: the one in the bay.</param>
    /// <param name="seenEntry">The newest entry that the caller knows of; another one refuses the step.</param>
    /// <param name="who">For the ledger.</param>
    /// <param name="make">Judges the session and gives the step.</param>
    public SessionView Take(string id, long? seenEntry, string who, Func<SessionView, SessionStep> make)
    {
        ArgumentNullException.ThrowIfNull(make);
        return Told(_flow.Take(all => Meant(all, id).Id, all => SessionLedger.Steps.Entry(_time.GetUtcNow(), who, make(View(Meant(all, id)))), seenEntry));
    }

    private SessionView Told(WorkSessions after)
    {
        var view = View(after.Newest!);
        Changed?.Invoke();
        return view;
    }

    private static WorkSession Meant(WorkSessions all, string id)
    {
        var open = all.Open ?? throw new StepRefusedException(SessionCodes.NoSession, "No session is open in this bay.", "Start one: Work session on the page, or scalelink work-session start.");
        return id.Length == 0 || id == open.Id ? open
            : throw new StepRefusedException(SessionCodes.SessionNotFound, "That session is not the one in the bay.", $"Session {open.Id} is open now.");
    }
}
