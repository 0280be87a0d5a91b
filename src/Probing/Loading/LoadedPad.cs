namespace ScaleLink.Probing.Loading;

/// <summary>
/// Watches one device for somebody who steps on its pad and off again. Only what comes back counts: whoever stood on a pad from the start and leaves it has
/// not shown which pad it is.
/// </summary>
/// <param name="places">Where its numbers stand.</param>
internal sealed class LoadedPad(IReadOnlyList<NumberPlace> places)
{
    private const double RestSeconds = 1.5, SteppingSeconds = 1, JudgedSeconds = 0.8, LongestLoadSeconds = 30;

    // Displays print once a second or less often: then it takes as many seconds.
    private const int FewestJudged = 4, FewestStepping = 2, FewestRest = 6;

    // A step of a person is some hundred times the noise of any pad that weighs cars; a door that slams is not.
    private const double LeastStep = 30;

    // Nearer to where it was than this part of the step: the load is off again.
    private const double Back = 0.1;

    // What is read in a wrong form jumps about; a load that has come stays.
    private const double LeastSteady = 5;

    private readonly List<Taken> _recent = [];
    private readonly List<Taken> _loaded = [];
    private NumberSpan[] _rest = [];
    private IReadOnlyList<int> _moved = [];
    private TimeSpan _from;

    /// <summary>The pad carries more or less than at rest.</summary>
    public bool IsLoaded => _loaded.Count > 0;

    /// <summary>It has been listened to for long enough to know its rest.</summary>
    public bool IsReady => _rest.Length > 0;

    /// <summary>Takes what the device said.</summary>
    /// <param name="at">When.</param>
    /// <param name="values">A number for each place.</param>
    /// <returns>The places of the cells once a load has come and gone; nothing otherwise.</returns>
    public IReadOnlyList<NumberPlace>? Take(TimeSpan at, IReadOnlyList<double> values)
    {
        if (at < _from)
            return null;
        _recent.Add(new Taken(at, values));
        var (judged, before) = (CountOf(JudgedSeconds, FewestJudged), CountOf(RestSeconds, FewestRest));
        var whole = before + CountOf(SteppingSeconds, FewestStepping) + judged;
        if (_recent.Count > whole)
            _recent.RemoveRange(0, _recent.Count - whole);
        if (_recent.Count < whole)
            return null;
        var now = Spans(_recent[^judged..]);
        if (IsLoaded)
            return Loaded(now, judged);
        // Rest is what was before somebody can have begun to step on it, so that a slow drift goes along with it.
        _rest = Spans(_recent[..before]);
        _moved = [.. Enumerable.Range(0, places.Count).Where(k => Step(k, now) > LeastStep && Math.Abs(now[k].Mean - _rest[k].Mean) > LeastSteady * now[k].Noise)];
        if (_moved.Count > 0)
            _loaded.Add(_recent[^1]);
        return null;
    }

    private IReadOnlyList<NumberPlace>? Loaded(NumberSpan[] now, int judged)
    {
        _loaded.Add(_recent[^1]);
        // Every number that moved: one that is read in a wrong form can come by where it was.
        if (_moved.All(k => Math.Abs(now[k].Mean - _rest[k].Mean) < Back * _loaded.Max(l => Away(l, k))))
        {
            // The load as it stood: the middle of its time, without the steps on and off.
            var stood = Math.Max(1, _loaded.Count - judged);
            var cells = new LoadedNumbers(places, _rest, Spans(_loaded.Skip(stood / 4).Take(Math.Max(1, stood / 2)))).Cells();
            Restart();
            return cells.Count > 0 ? cells : null;
        }

        if ((_loaded[^1].At - _loaded[0].At).TotalSeconds > LongestLoadSeconds)
            Restart();
        return null;
    }

    // Rest is learned anew, once the foot is off.
    private void Restart()
    {
        _from = _recent[^1].At + TimeSpan.FromSeconds(JudgedSeconds);
        _loaded.Clear();
        _recent.Clear();
        _rest = [];
    }

    private double Away(Taken taken, int place) => Math.Abs(taken.Values[place] - _rest[place].Mean);

    // In units of the noise. A number that does not flicker at rest has its smallest change in the place of noise.
    private double Step(int place, NumberSpan[] now)
    {
        var finest = _recent.Zip(_recent.Skip(1), (a, b) => Math.Abs(a.Values[place] - b.Values[place])).Where(d => d > 0).DefaultIfEmpty(double.PositiveInfinity).Min();
        return Math.Abs(now[place].Mean - _rest[place].Mean) / Math.Max(_rest[place].Noise, finest);
    }

    private int CountOf(double seconds, int fewest)
    {
        var span = (_recent[^1].At - _recent[0].At).TotalSeconds;
        return span > 0 ? Math.Max(fewest, (int)(seconds * (_recent.Count - 1) / span)) : fewest;
    }

    private NumberSpan[] Spans(IEnumerable<Taken> samples)
    {
        var all = samples.ToList();
        return [.. Enumerable.Range(0, places.Count).Select(k => NumberSpan.Of(all.Select(s => s.Values[k])))];
    }

    private readonly record struct Taken(TimeSpan At, IReadOnlyList<double> Values);
}
