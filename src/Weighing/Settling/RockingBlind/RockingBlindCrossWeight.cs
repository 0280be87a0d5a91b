namespace ScaleLink.Weighing.Settling.RockingBlind;

/// <summary>
/// Cross weight of a car that still rocks or is leaned on. Total and centre of gravity stay as they were when the car last stood
/// still, so the one unknown is the warp, and the blind direction reads it from every block.
/// </summary>
/// <remarks>
/// Not for a car on which ballast, fuel or people have moved for good: then a new reference is needed. Friction that lets go is a real
/// change of warp; the interval follows how much the warp has wandered within the last seconds.
/// </remarks>
sealed class RockingBlindCrossWeight(BlindDirection direction)
{
    const int Average = 7;
    const int Horizon = 30;

    readonly Corners[] _blocks = new Corners[Horizon];
    readonly double[] _warps = new double[Horizon];
    Corners _reference;
    Corners _referenceUncertainty;
    int _count;

    /// <summary>True once there is a reference.</summary>
    public bool Referred { get; private set; }

    /// <summary>Takes loads at rest as the reference for total and centre of gravity.</summary>
    /// <param name="settled">Settled loads, kg.</param>
    /// <param name="standardUncertainty">One standard uncertainty of each, kg.</param>
    /// <exception cref="ArgumentOutOfRangeException">The loads are those of no car.</exception>
    public void Refer(in Corners settled, in Corners standardUncertainty)
    {
        if (LoadShares.Of(settled) is null || !settled.IsFinite())
            throw new ArgumentOutOfRangeException(nameof(settled), settled, "A reference needs a car on the pads. Settle it first.");
        (_reference, _referenceUncertainty, Referred) = (settled, standardUncertainty, true);
        Clear();
    }

    /// <summary>Takes the next block of 50 ms and tells cross weight, percent; null without a reference.</summary>
    /// <param name="block">Loads, kg.</param>
    /// <param name="noise">Standard deviation of one block at rest, kg.</param>
    /// <exception cref="ArgumentOutOfRangeException">A load is not a finite number.</exception>
    public Value? Add(in Corners block, in Corners noise)
    {
        if (!block.IsFinite())
            throw new ArgumentOutOfRangeException(nameof(block), block, "A load is not a number. Leave the block out and clear.");
        if (!Referred) return null;
        var p = direction.Direction;
        var along = p.Dot(direction.Warp);
        _blocks[_count % Horizon] = block;
        _warps[_count % Horizon] = p.Dot(block - _reference) / along;
        _count++;

        var n = Math.Min(_count, Average);
        var warp = 0.0;
        Corners moved = default;
        for (var i = 1; i <= n; i++)
        {
            warp += _warps[(_count - i) % Horizon] / n;
            moved += 1.0 / n * (_blocks[(_count - i) % Horizon] - _reference);
        }
        moved -= warp * direction.Warp;
        var diagonal = direction.Warp.RF + direction.Warp.LR;
        var value = 100 * (_reference.RF + _reference.LR + warp * diagonal) / _reference.Sum;
        if (_count < Average) return new(value, null);

        var white = p.Times(noise);
        var variance = white.Dot(white) / (along * along) / n
            + direction.Covariance.VarianceOf(moved) / (along * along)
            + Wander(warp);
        var perKg = 100 / _reference.Sum;
        return new(value, perKg * Math.Sqrt(diagonal * diagonal * variance + ReferenceVariance(diagonal / along)));
    }

    /// <summary>Forgets the blocks, keeps the reference.</summary>
    public void Clear() => _count = 0;

    /// <summary>Mean square distance of the recent warps from the stated one: leakage of the rocking, friction, and noise once more.</summary>
    double Wander(double warp)
    {
        var n = Math.Min(_count, Horizon);
        var sum = 0.0;
        for (var i = 1; i <= n; i++)
        {
            var off = _warps[(_count - i) % Horizon] - warp;
            sum += off * off;
        }
        return sum / n;
    }

    double ReferenceVariance(double share)
    {
        var slope = Shares.CrossWeight - share * direction.Direction;
        var part = slope.Times(_referenceUncertainty);
        return part.Dot(part);
    }
}
