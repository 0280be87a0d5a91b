namespace CarOnPads.Physics;

/// <summary>A four that walks to where it is wanted at a steady pace: perches, jacks, pad feet, contact patches.</summary>
struct Approach
{
    readonly double _rate;

    /// <summary>At rest at <paramref name="start"/>; moves at <paramref name="rate"/> units per second.</summary>
    public Approach(in Four start, double rate) => (Now, Wanted, _rate) = (start, start, rate);

    /// <summary>Where it is.</summary>
    public Four Now;

    /// <summary>Where it goes.</summary>
    public Four Wanted;

    /// <summary>Still on the way.</summary>
    public readonly bool Busy => Now != Wanted;

    /// <summary>Seconds until it arrives.</summary>
    public readonly double TimeLeft => Wanted.Plus(Now.Times(-1)).Peak / _rate;

    /// <summary>Walks for <paramref name="step"/> seconds.</summary>
    public void Advance(double step)
    {
        for (var i = 0; i < 4; i++)
            if (Now[i] != Wanted[i])
                Now[i] += Math.Clamp(Wanted[i] - Now[i], -_rate * step, _rate * step);
    }

    /// <summary>Arrives at once.</summary>
    public void Finish() => Now = Wanted;
}
