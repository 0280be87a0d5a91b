namespace ScaleLink.Weighing.Cars;

/// <summary>One thing at each corner.</summary>
sealed record PerCorner<T>(T LF, T RF, T LR, T RR)
{
    /// <summary>The one at that corner.</summary>
    public T this[Corner corner] => corner switch
    {
        Corner.LF => LF,
        Corner.RF => RF,
        Corner.LR => LR,
        Corner.RR => RR,
        _ => throw new ArgumentOutOfRangeException(nameof(corner), corner, "There are four corners."),
    };

    /// <summary>One number of each.</summary>
    public Corners Map(Func<T, double> number) => new(number(LF), number(RF), number(LR), number(RR));

    /// <summary>This with one corner changed.</summary>
    public PerCorner<T> Change(Corner corner, Func<T, T> change) => corner switch
    {
        Corner.LF => this with { LF = change(LF) },
        Corner.RF => this with { RF = change(RF) },
        Corner.LR => this with { LR = change(LR) },
        Corner.RR => this with { RR = change(RR) },
        _ => throw new ArgumentOutOfRangeException(nameof(corner), corner, "There are four corners."),
    };
}
