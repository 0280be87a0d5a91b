namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Tells the settled loads of a rocking car, and how far they can be trusted, while it still rocks. Takes one block of four
/// loads each 50 ms. Pure, and free of allocation once constructed; not safe for several threads at once.
/// </summary>
/// <remarks>
/// Four minimum-variance windows of 1 to 3 s are fitted to every block; the one that claims the least uncertainty among those that
/// lie wholly after the last event speaks. Before the release has been followed by about a second nothing is claimed.
/// </remarks>
sealed class SettlingEstimator
{
    /// <summary>Length of a block, seconds.</summary>
    public const double BlockSeconds = 0.05;

    /// <summary>Factor from the stated standard uncertainty to an interval that covers 95 % or more.</summary>
    public const double Coverage = 2;

    const int PlainBlocks = 10;

    readonly SettlingOptions _options;
    readonly BlockHistory _history = new();
    readonly EventGuard _guard = new();
    readonly SettledRule _rule;
    readonly VerdictKeeper _verdict = new();
    readonly NoiseLearner _noise;
    readonly TimeToSettle _left;
    readonly CreepWatch _creep = new();
    readonly FixedAverages _fixed = new();
    readonly BankWindow[] _bank = [new(20, 10), new(28, 14), new(40, 20), new(60, 24)];
    Corners _published;
    bool _armed;

    /// <exception cref="ArgumentOutOfRangeException">An option makes no sense; the message says which.</exception>
    public SettlingEstimator(SettlingOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        _options = options.Checked();
        _rule = new(options.ToleranceKg);
        _left = new(options.ToleranceKg);
        _noise = new(options.NoiseKg);
    }

    /// <summary>Standard deviation of one block at rest, kg on each pad: as configured, then learned. Worth keeping for the next start.</summary>
    public Corners NoiseKg => _noise.NoiseKg;

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
        var wide = best is null ? default(double?) : Coverage * best.StandardUncertainty.Largest();
        var claim = wide <= _options.ClaimLimitKg ? best : null;
        _armed = best is not null;
        _published = best?.Loads ?? _history.Mean(Math.Min(PlainBlocks, _history.Count - _guard.Since));
        _rule.Add(_published, claim is null ? null : Coverage * claim.StandardUncertainty);
        _verdict.Add(claim is not null, _rule, touched);
        _left.Add(wide);
        var atRest = _verdict.Verdict == SettlingVerdict.Settled;
        _noise.Add(_history, atRest);
        _creep.Add(block, atRest);
        return _verdict.Verdict == SettlingVerdict.Moving ? ReadMoving(claim) : ReadingOf.Claim(claim, _published) with
        {
            Verdict = _verdict.Verdict,
            SecondsLeft = _verdict.Verdict == SettlingVerdict.Settling ? _left.Seconds() : null,
            DriftPerSecond = _creep.DriftPerSecond,
            WeighingReady = atRest && _rule.Age * BlockSeconds >= _options.WeighingHoldSeconds,
        };
    }

    /// <summary>Forgets all blocks, as after a gap in the data. The learned noise stays.</summary>
    public void Reset()
    {
        _history.Clear();
        _guard.Clear();
        _rule.Clear();
        _verdict.Clear();
        _noise.Clear();
        _left.Clear();
        _creep.Clear();
        foreach (var window in _bank) window.Clear();
        _armed = false;
    }

    /// <summary>Nothing is claimed yet, or the windows have nothing to offer and a fixed average must do.</summary>
    SettlingReading ReadMoving(BankWindow? claim)
    {
        var fallback = claim is null ? _fixed.Claim(_history, _guard.Since) : null;
        return ReadingOf.Claim(fallback, fallback?.Loads ?? _published) with { Fallback = fallback is not null };
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
}
