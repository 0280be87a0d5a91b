using ScaleLink.Api.V1;

namespace ScaleLink.Board.Readings;

/// <summary>Cross weight as it settled after one adjustment, percent, with U for 95 %, and what had been predicted before the turn.</summary>
public sealed record Settle(int Number, double CrossWeightPercent, double ExpandedPercent, double? PredictedPercent = null);

/// <summary>Remembers how cross weight settled, adjustment by adjustment, for as long as the page is open.</summary>
internal sealed class SettleTrace
{
    private const int MostRemembered = 60;
    private readonly List<Settle> _settles = [];
    private bool _hasMoved;

    public IReadOnlyList<Settle> Settles => _settles;

    /// <summary>Looks at live loads. An adjustment is known by its effect: more than the uncertainties of both readings explain.</summary>
    public void Add(Loads live)
    {
        if (live.Verdict != Verdict.Settled)
            _hasMoved = true;
        else if (live.CrossWeightPercent?.AsValue.Expanded is { } expanded)
            Add(live.CrossWeightPercent.Estimate, expanded);
    }

    private void Add(double value, double expanded)
    {
        var last = _settles.LastOrDefault();
        if (last is null || _hasMoved && Math.Abs(value - last.CrossWeightPercent) > expanded + last.ExpandedPercent)
            _settles.Add(new Settle(last?.Number + 1 ?? 0, value, expanded));
        else
            _settles[^1] = last with { CrossWeightPercent = value, ExpandedPercent = expanded };
        if (_settles.Count > MostRemembered)
            _settles.RemoveAt(0);
        _hasMoved = false;
    }
}
