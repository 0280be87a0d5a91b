using ScaleLink.Api.V1;
using ScaleLink.Client.Age;

namespace ScaleLink.Client.Readings;

/// <summary>Cross weight as it settled after one adjustment, percent, with U for 95 % of what may differ between two readings.</summary>
internal sealed record SettledStep(int Number, double CrossWeightPercent, double RepeatabilityPercent, string? Label);

/// <summary>Remembers how cross weight settled, adjustment by adjustment.</summary>
internal sealed class StepTrace
{
    private const int MostRemembered = 200;
    private readonly List<SettledStep> _steps = [];
    private string? _label;
    private bool _hasMoved;
    private bool _isAnnounced;
    private bool _isHandsOn;

    public IReadOnlyList<SettledStep> Steps => _steps;

    /// <summary>What the crew expects of the adjustment under way, percent.</summary>
    public double? Predicted { get; private set; }

    /// <summary>A new adjustment begins: until <see cref="HandsOff"/> no reading counts.</summary>
    public void Announce(string label, double? predicted) => (_label, Predicted, _isAnnounced, _isHandsOn) = (label, predicted, true, true);

    /// <summary>The next settled reading belongs to the adjustment announced.</summary>
    public void HandsOff() => (_isHandsOn, _hasMoved) = (false, true);

    /// <summary>Looks at one view of the loads.</summary>
    public void Add(Judged<Loads> view)
    {
        if (_isHandsOn || view is not { Freshness: Freshness.Live, Message: { } loads })
            return;
        if (loads.Verdict != Verdict.Settled)
            _hasMoved = true;
        else if (Repeatability.OfCrossWeight(loads) is { } repeatability)
            Settle(loads.CrossWeightPercent.Estimate, repeatability);
    }

    // An adjustment that nobody announced is known by its effect: more than two readings of the same car differ by.
    private void Settle(double value, double repeatability)
    {
        var isNew = _steps.Count == 0
            || _hasMoved && (_isAnnounced || Math.Abs(value - _steps[^1].CrossWeightPercent) > repeatability + _steps[^1].RepeatabilityPercent);
        if (isNew)
        {
            _steps.Add(new SettledStep(_steps.Count == 0 ? 0 : _steps[^1].Number + 1, value, repeatability, _label));
            (_label, Predicted, _isAnnounced) = (null, null, false);
            if (_steps.Count > MostRemembered)
                _steps.RemoveAt(0);
        }
        else
        {
            _steps[^1] = _steps[^1] with { CrossWeightPercent = value, RepeatabilityPercent = repeatability };
        }

        _hasMoved = false;
    }
}
