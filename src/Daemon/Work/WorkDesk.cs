using ScaleLink.Daemon.Patch;
using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Work;

/// <summary>The work session in the bay. Each step is in the ledger before it is acknowledged; a restart takes the session up where it was.</summary>
public sealed class WorkDesk
{
    private readonly WorkLedger _sessions;
    private readonly LiveBay _live;
    private readonly PatchDesk _patch;
    private readonly TimeProvider _time;
    private readonly Lock _gate = new();
    private WorkSession? _current;
    private WorkSession? _lastCaptured;

    /// <summary>Takes up the open session, if there is one.</summary>
    public WorkDesk(WorkLedger sessions, LiveBay live, PatchDesk patch, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        (_sessions, _live, _patch, _time) = (sessions, live, patch, time);
        var all = sessions.All();
        (_current, _lastCaptured) = (all.LastOrDefault(s => s.End is null), all.LastOrDefault(s => s.Captures.Count > 0));
    }

    /// <summary>Told after every step; called outside the lock.</summary>
    public event Action? Changed;

    /// <summary>The session in the bay as it stands now; null when none is open.</summary>
    public SessionView? Current
    {
        get
        {
            lock (_gate)
                return _current is { } session ? View(session) : null;
        }
    }

    /// <summary>The session that the last reading on record belongs to, open or not; null when none was ever taken.</summary>
    public WorkSession? LastCaptured
    {
        get
        {
            lock (_gate)
                return _lastCaptured;
        }
    }

    /// <summary>A session with what the bay sees now.</summary>
    public SessionView View(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        return new(session, session.Baseline is null && session.End is null
            ? BayFacts.Of([.. _live.Pads.Select(p => p.Snapshot())], _live.Newest, _patch.State, session.Car, _time.GetUtcNow())
            : new([]));
    }

    /// <summary>Begins a session.</summary>
    public SessionView Begin(SessionStarted start, string who)
    {
        SessionView view;
        lock (_gate)
        {
            if (_current is not null)
                throw new RefusedException(SessionCodes.SessionOpen, $"Session {_current.Id} is open in this bay.", "Go on with it, finish it, or abandon it.");
            _current = _sessions.Begin(start, who);
            view = View(_current);
        }

        Changed?.Invoke();
        return view;
    }

    /// <summary>Takes one step.</summary>
    /// <param name="id">The session meant; empty: the one in the bay.</param>
    /// <param name="seenEntry">The newest entry that the caller knows of; another one refuses the step.</param>
    /// <param name="who">For the ledger.</param>
    /// <param name="make">Judges the session and gives the step.</param>
    public SessionView Take(string id, long? seenEntry, string who, Func<SessionView, WorkStep> make)
    {
        ArgumentNullException.ThrowIfNull(make);
        SessionView view;
        lock (_gate)
        {
            if (_current is not { } session)
                throw new RefusedException(SessionCodes.NoSession, "No session is open in this bay.", "Start one: Work on the page, or scalelink work start.");
            if (id.Length > 0 && id != session.Id)
                throw new RefusedException(SessionCodes.SessionNotFound, "That session is not the one in the bay.", $"Session {session.Id} is open now.");
            if (seenEntry is { } seen && seen != session.Entry)
                throw new RefusedException(SessionCodes.SomebodyWasFaster, "Somebody else has taken a step meanwhile.", "Look at the session again, then decide.");
            var next = _sessions.Take(session, make(View(session)), who);
            _current = next.End is null ? next : null;
            _lastCaptured = next.Captures.Count > 0 ? next : _lastCaptured;
            view = View(next);
        }

        Changed?.Invoke();
        return view;
    }
}
