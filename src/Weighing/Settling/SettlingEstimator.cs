namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Tells the settled loads of a rocking car, and how far they can be trusted, while it still rocks. Takes one block of four
/// loads each 50 ms. Pure, and free of allocation once constructed; not safe for several threads at once.
/// </summary>
/// <remarks>
/// Four minimum-variance windows of 1 to 3 s are fitted to every block; the one that claims the least uncertainty among those that
/// lie wholly after the last event speaks. Before the release has been followed by about a second nothing is claimed.
/// </remarks>
public sealed class SettlingEstimator
{
    /// <summary>Length of a block, seconds.</summary>
    public const double BlockSeconds = 0.05;

    const double Coverage = 2;
    const double DegreesOfFreedomForCoverage = 60;
    const int PlainBlocks = 10;

    readonly SettlingOptions _options;
    readonly BlockHistory _history = new();
    readonly EventGuard _guard = new();
    readonly SettledRule _rule;
    readonly VerdictKeeper _verdict = new();
    readonly BankWindow[] _bank = [new(20, 10), new(28, 14), new(40, 20), new(60, 24)];
    Corners _published;
    bool _armed;

    /// <exception cref="ArgumentOutOfRangeException">An option makes no sense; the message says which.</exception>
    public SettlingEstimator(SettlingOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        _options = options.Checked();
        _rule = new(options.ToleranceKg);
        NoiseKg = options.NoiseKg;
    }

    /// <summary>Standard deviation of one block at rest, kg on each pad.</summary>
    public Corners NoiseKg { get; private set; }

    /// <summary>Takes the next block and says what is known now.</summary>
    /// <param name="block">Mean of each pad over the last 50 ms, kg.</param>
    /// <exception cref="ArgumentOutOfRangeException">A load is not a finite number: leave the block out and call <see cref="Reset"/>.</exception>
    public SettlingReading Add(in Corners block)
    {
        if (!block.IsFinite())
            throw new ArgumentOutOfRangeException(nameof(block), block, "A load is not a number. Leave the block out and reset.");
        _history.Add(block);
        var touched = _armed && _guard.Sees(_history, _published, NoiseKg);
        foreach (var window in _bank) window.Update(_history, NoiseKg);
        var best = Choose();
        _armed = best is not null;
        _published = best?.Loads ?? _history.Mean(Math.Min(PlainBlocks, _history.Count - _guard.Since));
        var claim = best is not null && Coverage * best.StandardUncertainty.Largest() <= _options.ClaimLimitKg ? best : null;
        _rule.Add(_published, claim is null ? null : Coverage * claim.StandardUncertainty);
        _verdict.Add(claim is not null, _rule.Holds, touched);
        return Read(_verdict.Verdict == SettlingVerdict.Moving ? null : claim);
    }

    /// <summary>Forgets all blocks, as after a gap in the data. The learned noise stays.</summary>
    public void Reset()
    {
        _history.Clear();
        _guard.Clear();
        _rule.Clear();
        _verdict.Clear();
        foreach (var window in _bank) window.Clear();
        _armed = false;
    }

    BankWindow? Choose()
    {
        BankWindow? best = null;
        var least = double.PositiveInfinity;
        foreach (var window in _bank)
        {
            if (!window.Tested || _history.Count - window.Length < _guard.Since) continue;
            var u = window.StandardUncertainty;
            if (u.Dot(u) >= least) continue;
            (best, least) = (window, u.Dot(u));
        }
        return best;
    }

    SettlingReading Read(BankWindow? claim)
    {
        var shares = LoadShares.Of(_published);
        return new()
        {
            Verdict = _verdict.Verdict,
            Loads = _published,
            StandardUncertainty = claim?.StandardUncertainty,
            TotalKg = Combine(claim, _published.Sum, Corners.Same(1)),
            CrossWeightPercent = shares is { } s ? Combine(claim, s.CrossWeight, s.CrossWeightSlope) : null,
            FrontSharePercent = shares is { } f ? Combine(claim, f.Front, f.FrontSlope) : null,
            LeftSharePercent = shares is { } l ? Combine(claim, l.Left, l.LeftSlope) : null,
            FrontSideDifferenceKg = Combine(claim, _published.LF - _published.RF, new(1, -1, 0, 0)),
            RearSideDifferenceKg = Combine(claim, _published.LR - _published.RR, new(0, 0, 1, -1)),
            DegreesOfFreedom = DegreesOfFreedomForCoverage,
            CaptureReady = _verdict.Verdict == SettlingVerdict.Settled && _rule.Age * BlockSeconds >= _options.CaptureHoldSeconds,
        };
    }

    static Estimate Combine(BankWindow? claim, double value, in Corners slope) =>
        new(value, claim is null ? null : Math.Sqrt(claim.VarianceOf(slope)));
}
