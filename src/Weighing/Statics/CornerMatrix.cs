namespace ScaleLink.Weighing.Statics;

/// <summary>Four by four, corners by corners; each part is a row. A value, never shared state.</summary>
readonly record struct CornerMatrix(Corners LF, Corners RF, Corners LR, Corners RR)
{
    /// <summary>The given numbers on the diagonal, zero elsewhere.</summary>
    public static CornerMatrix Diagonal(in Corners d) => new(new(d.LF, 0, 0, 0), new(0, d.RF, 0, 0), new(0, 0, d.LR, 0), new(0, 0, 0, d.RR));

    /// <summary>One row a corner.</summary>
    public static CornerMatrix FromRows(Func<Corner, Corners> row) => new(row(Corner.LF), row(Corner.RF), row(Corner.LR), row(Corner.RR));

    /// <summary>One column a corner.</summary>
    public static CornerMatrix FromColumns(Func<Corner, Corners> column) => FromRows(column).Transposed;

    /// <summary>The outer product.</summary>
    public static CornerMatrix Outer(in Corners a, in Corners b) => new(a.LF * b, a.RF * b, a.LR * b, a.RR * b);

    /// <summary>A row.</summary>
    public Corners this[Corner row] => row switch
    {
        Corner.LF => LF,
        Corner.RF => RF,
        Corner.LR => LR,
        Corner.RR => RR,
        _ => throw new ArgumentOutOfRangeException(nameof(row), row, "There are four corners."),
    };

    /// <summary>A column.</summary>
    public Corners Column(Corner corner) => new(LF[corner], RF[corner], LR[corner], RR[corner]);

    /// <summary>Rows become columns.</summary>
    public CornerMatrix Transposed => new(Column(Corner.LF), Column(Corner.RF), Column(Corner.LR), Column(Corner.RR));

    /// <summary>The numbers on the diagonal.</summary>
    public Corners DiagonalPart => new(LF.LF, RF.RF, LR.LR, RR.RR);

    /// <summary>Variance of the combination with these weights, where this is a covariance; at least zero.</summary>
    public double VarianceOf(in Corners weights) => Math.Max(0, weights.Dot(this * weights));

    /// <summary>Matrix times column.</summary>
    public static Corners operator *(in CornerMatrix m, in Corners v) => new(m.LF.Dot(v), m.RF.Dot(v), m.LR.Dot(v), m.RR.Dot(v));

    /// <summary>Matrix times matrix.</summary>
    public static CornerMatrix operator *(in CornerMatrix a, in CornerMatrix b)
    {
        var columns = b.Transposed;
        return new(columns * a.LF, columns * a.RF, columns * a.LR, columns * a.RR);
    }

    /// <summary>Every entry times the factor.</summary>
    public static CornerMatrix operator *(double factor, in CornerMatrix m) => new(factor * m.LF, factor * m.RF, factor * m.LR, factor * m.RR);

    /// <summary>Entry by entry.</summary>
    public static CornerMatrix operator +(in CornerMatrix a, in CornerMatrix b) => new(a.LF + b.LF, a.RF + b.RF, a.LR + b.LR, a.RR + b.RR);

    /// <summary>Entry by entry.</summary>
    public static CornerMatrix operator -(in CornerMatrix a, in CornerMatrix b) => new(a.LF - b.LF, a.RF - b.RF, a.LR - b.LR, a.RR - b.RR);

    /// <summary>The inverse, by elimination with the largest pivot.</summary>
    /// <exception cref="ArithmeticException">The matrix has no inverse.</exception>
    public CornerMatrix Inverse()
    {
        Span<Corners> left = [LF, RF, LR, RR];
        Span<Corners> right = [new(1, 0, 0, 0), new(0, 1, 0, 0), new(0, 0, 1, 0), new(0, 0, 0, 1)];
        for (var column = 0; column < 4; column++)
        {
            var corner = (Corner)column;
            var pivot = column;
            for (var row = column + 1; row < 4; row++)
                if (Math.Abs(left[row][corner]) > Math.Abs(left[pivot][corner]))
                    pivot = row;
            (left[column], left[pivot]) = (left[pivot], left[column]);
            (right[column], right[pivot]) = (right[pivot], right[column]);
            var scale = 1 / left[column][corner];
            if (!double.IsFinite(scale))
                throw new ArithmeticException("The matrix has no inverse.");
            (left[column], right[column]) = (scale * left[column], scale * right[column]);
            for (var row = 0; row < 4; row++)
                if (row != column)
                {
                    var factor = left[row][corner];
                    (left[row], right[row]) = (left[row] - factor * left[column], right[row] - factor * right[column]);
                }
        }
        return new(right[0], right[1], right[2], right[3]);
    }
}
