using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.SiteCheck;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>Where the empty pads are watched before a car is weighed on them: one watch at a time, its outcome in the ledger.</summary>
internal sealed class SiteCheckDesk
{
    /// <summary>Shortest and longest watch, minutes.</summary>
    public const double Shortest = 2, Longest = 30;

    private const double GuessedTotalKg = 1000;
    private const double JudgeEverySeconds = 5;

    private readonly LiveBay _bay;
    private readonly PatchDesk _patch;
    private readonly StandingCar _standing;
    private readonly BayConfiguration _configuration;
    private readonly string _name;
    private readonly BayClock _clock;
    private readonly Workflow<SiteCheckState> _flow;
    private SiteCheckWatch? _watch;
    private SiteCheckWatch? _ended;
    private (PatchState Patch, CarModel? Car) _judgedWith;
    private double _judgedAt;
    private Corners? _weighed;

    /// <summary>Takes up what the ledger says.</summary>
    public SiteCheckDesk(LiveBay bay, PatchDesk patch, StandingCar standing, BayConfiguration configuration, SiteCheckLedger ledger, BayClock clock)
    {
        (_bay, _patch, _standing, _configuration, _name, _clock, _flow) = (bay, patch, standing, configuration, ledger.Bay, clock, ledger.TakeUp());
        _flow.Show(state => state.Now is { Record: var cut }
            ? new(null, cut with { Ending = SiteCheckEnding.Restarted, Why = SiteCheckWatch.Early(cut, null, "the daemon was ended in the middle of it.", "Watch again; the pads have to be empty and zeroed.") })
            : state);
    }

    /// <summary>As it stands now.</summary>
    public SiteCheckState State => _flow.State;

    /// <summary>Begins a watch; refused for every reason at once.</summary>
    /// <param name="minutes">From <see cref="Shortest"/> to <see cref="Longest"/>.</param>
    /// <param name="totalKg">Of the car that is expected; null: as the last one that stood here.</param>
    /// <param name="who">Who asks.</param>
    public void Start(double minutes, double? totalKg, string who) => _flow.Alone(() =>
    {
        if (_watch is not null)
            throw new StepRefusedException(SiteCheckCodes.UnderWay, "The pads are being watched already.", "Wait for it, or stop it: scalelink patch site-check --stop.");
        if (SiteCheckStart.Refusals(_bay) is { Count: > 0 } refusals)
            throw new StepRefusedException(refusals);
        var record = new SiteCheckRecord(Now, who, minutes, totalKg ?? _weighed?.Sum ?? GuessedTotalKg, totalKg is null && _weighed is null);
        var (start, tapes) = (_clock.NowNs, Tapes());
        Write(record, record.StartedAt);
        _watch = new SiteCheckWatch(record, tapes, start, _configuration.Weigh.RaisedBelowKg);
        _judgedAt = 0;
    });

    /// <summary>Ends the watch; what was seen is judged and kept.</summary>
    public void Stop(string who) => _flow.Alone(() => End(
        _watch ?? throw new StepRefusedException(SiteCheckCodes.NoWatch, "No watch is under way.", "Start one: scalelink patch site-check, or Patch on the page."),
        SiteCheckEnding.Stopped, $"{who} stopped it.", "Watch the whole time when there is more of it."));

    /// <summary>The daemon ends; what was seen is kept.</summary>
    public void Close() => _flow.Alone(() =>
    {
        if (_watch is { } watch)
            End(watch, SiteCheckEnding.Restarted, "the daemon was ended.", "Watch again.");
    });

    /// <summary>Told of every reading.</summary>
    public void Look(BayReading reading) => _flow.Alone(() =>
    {
        if (reading.Verdict == BayVerdict.Settled && reading.Corners.All(c => c.LoadKg is { Estimate: > 0 }))
            _weighed = Corners.From(c => reading.Corners[(int)c].LoadKg!.Value.Estimate);
        if (_watch is null && _ended is { } ended && (!ReferenceEquals(_judgedWith.Patch, _patch.State) || !ReferenceEquals(_judgedWith.Car, _standing.Model)))
            JudgeAgain(ended);
        if (_watch is not { } watch || !watch.Look(reading.AtNs))
            return;
        if (watch.Over() is { Ending: not SiteCheckEnding.None } over)
        {
            End(watch, over.Ending, over.Why);
            return;
        }

        var soFar = State.Now?.SoFar;
        if (watch.Seconds - _judgedAt >= JudgeEverySeconds)
            (soFar, _judgedAt) = (Judge(watch).Report, watch.Seconds);
        _flow.Show(state => state with { Now = new(watch.Record, watch.Seconds, soFar) });
    });

    private DateTimeOffset Now => _clock.ToUtc(_clock.NowNs);

    // As they were then: a pad that falls out takes its calibration with it.
    private List<PadTape> Tapes() => [.. _bay.Pads.Select(p => new PadTape(p, p.Standing.Identity?.SerialNumber ?? "", p.Standing.Calibration, p.Block(_clock.NowNs - Nanoseconds.PerSecond, _clock.NowNs).ZeroKg ?? 0))];

    private void Write(SiteCheckRecord record, DateTimeOffset at) => _flow.Take(_name, _ => SiteCheckLedger.Steps.Entry(at, record.Who, record));

    private void End(SiteCheckWatch watch, SiteCheckEnding ending, string why, string remedy) => End(watch, ending, watch.Early(why, remedy));

    private void End(SiteCheckWatch watch, SiteCheckEnding ending, Diagnostic? why)
    {
        var (report, no) = Judge(watch);
        var record = watch.Record with { Ending = ending, EndedAt = Now, Report = report, Why = why ?? no };
        Write(record, record.EndedAt.Value);
        (_watch, _ended) = (null, watch);
    }

    // Shims, a correction, another car: what was seen of the empty pads stays true, what it comes to does not.
    private void JudgeAgain(SiteCheckWatch ended)
    {
        if (State.Last is not { } last || Judge(ended).Report is not { } report)
            return;
        Write(last with { Report = report }, Now);
    }

    private (SiteCheckReport? Report, Diagnostic? No) Judge(SiteCheckWatch watch)
    {
        var total = watch.Record.TotalKg;
        // As the last car stood, were it as heavy as said; quarters where none stood.
        var loads = _weighed is { } weighed ? total / weighed.Sum * weighed : Corners.Same(total / 4);
        var patch = _patch.State;
        _judgedWith = (patch, _standing.Model);
        try
        {
            return (SiteCheckJudge.Judge(new SiteCheckQuestion([.. watch.Tapes.Select(t => t.Watched(loads[t.Corner], _configuration.Place, watch.EmptyUntilSeconds))], loads)
            {
                Car = _judgedWith.Car is { } car ? new CarStatics(car, total) : null,
                HeightMeasurement = patch.HeightMeasurement?.HeightMeasurement,
                On = patch.On,
                WantedPercent = _configuration.Target?.TolerancePercent ?? CarTargets.UsualTolerancePercent,
            }), null);
        }
        catch (DiagnosticException e)
        {
            return (null, e.Diagnostics[0]);
        }
    }
}
