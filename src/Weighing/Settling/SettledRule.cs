namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Settled: the expanded uncertainty has been within the tolerance on all four pads for 0.3 s, and the loads have not wandered by
/// more than the tolerance meanwhile. Once settled, half as much uncertainty again is borne, so that the verdict does not flicker.
/// </summary>
sealed class SettledRule(double tolerance)
{
    const int Hold = 6;
    const double Patience = 1.5;

    readonly Corners[] _recent = new Corners[Hold];
    int _good;

    /// <summary>True while the rule holds.</summary>
    public bool Holds { get; private set; }

    /// <summary>Blocks since the rule began to hold.</summary>
    public int Age { get; private set; }

    /// <summary>One more block. <paramref name="expanded"/>: expanded uncertainty (k = 2), kg; null: nothing claimed.</summary>
    public void Add(in Corners loads, in Corners? expanded)
    {
        var limit = Holds ? Patience * tolerance : tolerance;
        if (expanded is not { } wide || wide.Largest() > limit)
        {
            Clear();
            return;
        }
        _recent[_good % Hold] = loads;
        _good++;
        var holds = _good >= Hold && Spread() <= tolerance;
        Age = holds && Holds ? Age + 1 : 0;
        Holds = holds;
    }

    public void Clear() => (_good, Age, Holds) = (0, 0, false);

    double Spread()
    {
        Corners least = _recent[0], most = _recent[0];
        foreach (ref readonly var loads in _recent.AsSpan())
        {
            least = CornerMath.Least(least, loads);
            most = CornerMath.Most(most, loads);
        }
        return (most - least).Largest();
    }
}
