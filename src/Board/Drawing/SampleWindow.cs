using System.Text;
using ScaleLink.Api.V1;

namespace ScaleLink.Board.Drawing;

/// <summary>The samples of one pad over the last seconds: loads, or raw counts while the pad has no load.</summary>
internal sealed class SampleWindow
{
    private const double LongestSeconds = 10;
    private readonly Queue<(long AtNs, double Value)> _samples = new();
    private string _startId = "";

    public int Count => _samples.Count;

    /// <summary>Whether the values are loads, kg; else counts.</summary>
    public bool IsLoad { get; private set; }

    public double Lowest => _samples.Min(s => s.Value);

    public double Highest => _samples.Max(s => s.Value);

    public double Seconds => _samples.Count < 2 ? 0 : (_samples.Last().AtNs - _samples.Peek().AtNs) / 1e9;

    public void Add(SampleBatch batch)
    {
        foreach (var sample in batch.Samples)
        {
            if (batch.StartId != _startId || sample.HasLoadKg != IsLoad)
                _samples.Clear();
            (_startId, IsLoad) = (batch.StartId, sample.HasLoadKg);
            _samples.Enqueue((sample.MonotonicNs, sample.HasLoadKg ? sample.LoadKg : sample.Counts.Sum(c => (double)c)));
        }

        while (_samples.Count > 1 && (_samples.Last().AtNs - _samples.Peek().AtNs) / 1e9 > LongestSeconds)
            _samples.Dequeue();
    }

    /// <summary>Points of a line that fills the picture: time from left to right, value upwards.</summary>
    public string Line(double width, double height)
    {
        var (low, high, first, span) = (Lowest, Highest, _samples.Peek().AtNs, Math.Max(1, _samples.Last().AtNs - _samples.Peek().AtNs));
        var line = new StringBuilder();
        foreach (var (at, value) in _samples)
            line.Append(Svg.N((at - first) * width / span)).Append(',').Append(Svg.N(high > low ? height - (value - low) / (high - low) * height : height / 2)).Append(' ');
        return line.ToString();
    }
}
