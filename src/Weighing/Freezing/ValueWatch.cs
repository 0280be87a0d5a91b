namespace ScaleLink.Weighing.Freezing;

/// <summary>
/// Whether the numbers of one cell still follow it. A cell whose noise is seen to reach across several divisions, time and again while nothing moves, cannot
/// give one number for long: its converter has stopped. A cell whose noise is below the division, or filtered away, may give one for hours, and nothing is
/// said of it here; <see cref="SiblingWatch"/> may tell. Common practice, no published source; the limits are the project's own.
/// </summary>
internal sealed class ValueWatch
{
    private const int LeastSamples = 128, LeastWindows = 3;
    private const double LeastSeconds = 5, LongestGapSeconds = 1;
    // Mean square of the steps, of those that are any since a device may send each number several times, against the variance. White noise gives 2 (von
    // Neumann 1941); a car that rocks at 2 Hz gives 0.4 and less from 20 samples a second on.
    private const double LeastWhiteness = 1;
    // Noise of a standard deviation of 0.45 divisions: it then changes the number at least four times in ten, wherever in a division it lies.
    private const double LeastFarShare = 0.02;
    private const double MostGrowth = 4;
    // A stretch of standstill is no part of the noise.
    private const int LeastRunsAWindow = 8;
    // A run eight times as long as the longest that noise has made; noise of that size makes one with a chance far below 1e-9.
    private const int TimesTheLongest = 8;
    private const double LeastStillSeconds = 3;

    private long _value;
    private long _changes;
    private bool _hasValue;
    private double _lastSeconds;
    private int _run;
    private double _runSeconds;
    private Window _window;
    private int _windows;
    private double _firstVariance;
    private int _longestRun;

    /// <summary>What a comparison with others takes.</summary>
    public SeenValue Seen => new(_value, Division, _changes);

    /// <summary>Smallest step seen between two numbers that differ; 0: none was seen.</summary>
    public long Division { get; private set; }

    /// <summary>Noise shows above the division, so that one number for long is a fault.</summary>
    public bool ShowsNoise => _windows >= LeastWindows;

    /// <summary>It gives one number although it cannot. Zero does not count: indicators hold an empty pad there.</summary>
    public bool IsStill => ShowsNoise && _value != 0 && _run > TimesTheLongest * _longestRun && _runSeconds >= LeastStillSeconds;

    /// <summary>The next number of a sound converter.</summary>
    /// <param name="seconds">When it was measured; rises.</param>
    /// <param name="value">The number.</param>
    public void Add(double seconds, long value)
    {
        var passed = seconds - _lastSeconds;
        _lastSeconds = seconds;
        if (!_hasValue || passed > LongestGapSeconds)
        {
            Interrupt();
            (_value, _hasValue, _window) = (value, true, new Window(seconds, value));
            return;
        }

        var step = Math.Abs(value - _value);
        Follow(step, passed);
        _value = value;
        _window.Add(value, step, Division);
        if (_window.Count >= LeastSamples && seconds - _window.Begun >= LeastSeconds)
            Close(seconds);
    }

    /// <summary>Numbers are missing, or are none of a sound converter: the run ends, what was learned stays.</summary>
    public void Interrupt() => (_hasValue, _run, _runSeconds) = (false, 0, 0);

    private void Follow(long step, double passed)
    {
        if (step == 0)
        {
            _run++;
            _runSeconds += passed;
            return;
        }

        _changes++;
        _window.LongestRun = Math.Max(_window.LongestRun, _run);
        (_run, _runSeconds) = (0, 0);
        if (Division != 0 && step >= Division)
            return;
        // What counted as far in a coarser division says nothing in this one.
        Division = step;
        _windows = 0;
    }

    private void Close(double seconds)
    {
        if (!ShowsNoise)
            Learn();
        _window = new Window(seconds, _value);
    }

    private void Learn()
    {
        _window.LongestRun = Math.Max(_window.LongestRun, _run);
        var isNoise = _window.Whiteness >= LeastWhiteness && _window.FarShare >= LeastFarShare && _window.LongestRun <= _window.Count / LeastRunsAWindow;
        var isAsBefore = _windows > 0 && _window.Variance < MostGrowth * _firstVariance && _window.Variance > _firstVariance / MostGrowth;
        if (!isNoise || !isAsBefore)
            (_windows, _firstVariance, _longestRun) = (0, _window.Variance, 1);
        if (!isNoise)
            return;
        _windows++;
        _longestRun = Math.Max(_longestRun, _window.LongestRun);
    }

    /// <summary>Sums over some seconds, about the first number.</summary>
    private struct Window(double begun, long first)
    {
        private readonly long _first = first;
        private double _sum;
        private double _squares;
        private double _steps;
        private int _stepped;
        private int _far;

        public readonly double Begun => begun;

        public int Count { get; private set; }

        public int LongestRun { get; set; }

        public readonly double Variance => (_squares - _sum * _sum / Count) / Count;

        public readonly double Whiteness => Variance > 0 ? _steps / _stepped / Variance : 0;

        public readonly double FarShare => (double)_far / Count;

        public void Add(long value, long step, long division)
        {
            var off = (double)value - _first;
            Count++;
            _sum += off;
            _squares += off * off;
            _steps += (double)step * step;
            _stepped += step > 0 ? 1 : 0;
            if (division > 0 && step >= 2 * division)
                _far++;
        }
    }
}
