namespace ScaleLink.Board.Drawing;

/// <summary>The last half percent of the beam's scale, enlarged. As on the beam, more cross weight is further down.</summary>
/// <param name="Target">Percent.</param>
/// <param name="TolerancePercent">Half width of the target; absent without one.</param>
/// <param name="OffPercent">Cross weight less its target; absent without a cross weight.</param>
/// <param name="Expanded">Its U for 95 %; absent where nothing is claimed.</param>
internal readonly record struct BeamLens(double Target, double? TolerancePercent, double? OffPercent, double? Expanded)
{
    public const double Left = 566, Right = 676, Top = 6, Bottom = 206;
    private const double Middle = (Top + Bottom) / 2, PerPercent = (Bottom - Top) / 2 / BeamRange.Lens, MarkEvery = 0.1;

    /// <summary>Where the hand of the lens is drawn.</summary>
    public const double Centre = (Left + Right) / 2;

    /// <summary>Ticks at both edges, every tenth of a percent.</summary>
    public static string Ticks { get; } = string.Concat(Enumerable.Range(-4, 9).Select(k => $"M{Svg.N(Left)} {Svg.N(Y(k * MarkEvery))}h8M{Svg.N(Right)} {Svg.N(Y(k * MarkEvery))}h-8"));

    /// <summary>The target.</summary>
    public static string TargetLine { get; } = $"M{Svg.N(Left)} {Svg.N(Middle)}H{Svg.N(Right)}";

    /// <summary>What the lens covers, in words.</summary>
    public string Range => $"{Target - BeamRange.Lens:0.##} to {Target + BeamRange.Lens:0.##}";

    /// <summary>Top and height of the tolerance.</summary>
    public (double Y, double Height)? Tolerance => TolerancePercent is { } tolerance ? Span(-tolerance, tolerance) : null;

    /// <summary>Top and height of the reading's interval.</summary>
    public (double Y, double Height)? Interval => (IsInside, OffPercent, Expanded) is (true, { } off, { } u) ? Span(off - u, off + u) : null;

    /// <summary>The hand, standing at the target.</summary>
    public static string Hand { get; } = $"M{Svg.N(Centre - 34)} {Svg.N(Middle)}l16-9v18zM{Svg.N(Centre + 34)} {Svg.N(Middle)}l-16-9v18zM{Svg.N(Centre - 20)} {Svg.N(Middle - 2)}h40v4h-40z";

    /// <summary>How far below the target the hand stands; absent where the reading lies outside the lens.</summary>
    public double? HandShift => IsInside ? Y(OffPercent!.Value) - Middle : null;

    /// <summary>Points at the reading where that lies outside.</summary>
    public string? Pointer => OffPercent is not { } off || IsInside ? null : off > 0
        ? $"M{Svg.N(Centre)} {Svg.N(Bottom - 8)}l-16-26h32z"
        : $"M{Svg.N(Centre)} {Svg.N(Top + 8)}l-16 26h32z";

    private bool IsInside => OffPercent is { } off && Math.Abs(off) <= BeamRange.Lens;

    private static (double Y, double Height) Span(double from, double to) => (Y(from), Y(to) - Y(from));

    private static double Y(double offPercent) => Middle + Math.Clamp(offPercent, -BeamRange.Lens, BeamRange.Lens) * PerPercent;
}
