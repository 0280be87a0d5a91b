namespace ScaleLink.Measure;

/// <summary>Four numbers, one a corner: loads in kg, heights in mm, turns. A value, never shared state.</summary>
public readonly record struct Corners(double LF, double RF, double LR, double RR)
{
    /// <summary>The four corners in order.</summary>
    public static ReadOnlySpan<Corner> All => [Corner.LF, Corner.RF, Corner.LR, Corner.RR];

    /// <summary>The same number at every corner.</summary>
    public static Corners Same(double value) => new(value, value, value, value);

    /// <summary>One number a corner, asked of <paramref name="value"/>.</summary>
    public static Corners From(Func<Corner, double> value) =>
        new(value(Corner.LF), value(Corner.RF), value(Corner.LR), value(Corner.RR));

    /// <summary>The number at one corner.</summary>
    public double this[Corner corner] => corner switch
    {
        Corner.LF => LF,
        Corner.RF => RF,
        Corner.LR => LR,
        Corner.RR => RR,
        _ => throw new ArgumentOutOfRangeException(nameof(corner), corner, "There are four corners."),
    };

    /// <summary>Sum over the corners.</summary>
    public double Sum => LF + RF + LR + RR;

    /// <summary>The same change made to each number.</summary>
    public Corners Map(Func<double, double> change) => new(change(LF), change(RF), change(LR), change(RR));

    /// <summary>This with one corner replaced.</summary>
    public Corners With(Corner corner, double value) => corner switch
    {
        Corner.LF => this with { LF = value },
        Corner.RF => this with { RF = value },
        Corner.LR => this with { LR = value },
        Corner.RR => this with { RR = value },
        _ => throw new ArgumentOutOfRangeException(nameof(corner), corner, "There are four corners."),
    };

    /// <summary>Inner product.</summary>
    public double Dot(Corners other) => LF * other.LF + RF * other.RF + LR * other.LR + RR * other.RR;

    /// <summary>Corner by corner.</summary>
    public static Corners operator +(Corners a, Corners b) => new(a.LF + b.LF, a.RF + b.RF, a.LR + b.LR, a.RR + b.RR);

    /// <summary>Corner by corner.</summary>
    public static Corners operator -(Corners a, Corners b) => new(a.LF - b.LF, a.RF - b.RF, a.LR - b.LR, a.RR - b.RR);

    /// <summary>Every corner times the factor.</summary>
    public static Corners operator *(double factor, Corners a) => new(factor * a.LF, factor * a.RF, factor * a.LR, factor * a.RR);
}
