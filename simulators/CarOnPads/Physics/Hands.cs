namespace CarOnPads.Physics;

/// <summary>
/// What people do to the body: somebody leans on a corner, the crew bounces the car. Bouncing is a random push level
/// at each corner every 0.15 s, linear in between, downward, so that it excites every mode as real hands do.
/// </summary>
sealed class Hands
{
    const double LevelTime = 0.15;
    const double LeanRate = 600; // N/s: a person shifts their weight in some tenths of a second
    readonly NoiseSource _noise;
    Four _lean;
    Four _leanWanted;
    Four _leanUntil = Four.Same(double.PositiveInfinity);
    Four _share;
    Four _from;
    Four _to;
    double _levelStart;
    double _pushUntil = double.NegativeInfinity;
    double _strength;

    /// <summary>Hands whose strength and rhythm come from <paramref name="noise"/>.</summary>
    public Hands(NoiseSource noise) => _noise = noise;

    Hands(Hands other)
    {
        _noise = other._noise.Copy();
        (_lean, _leanWanted, _leanUntil) = (other._lean, other._leanWanted, other._leanUntil);
        (_share, _from, _to, _levelStart) = (other._share, other._from, other._to, other._levelStart);
        (_pushUntil, _strength) = (other._pushUntil, other._strength);
    }

    /// <summary>Hands that will do the same from here on.</summary>
    public Hands Copy() => new(this);

    /// <summary>Puts a steady weight in N on one corner until a time in s (infinity: until changed).</summary>
    public void Lean(Wheel wheel, double newtons, double until)
    {
        _leanWanted[wheel] = newtons;
        _leanUntil[wheel] = until;
    }

    /// <summary>Bounces the corners with the given shares (0 to 1) up to <paramref name="strength"/> N between two times in s.</summary>
    public void Bounce(in Four shares, double strength, double from, double until)
    {
        _share = shares;
        _strength = strength;
        _pushUntil = until;
        _from = new Four();
        _levelStart = from;
        DrawLevels();
    }

    /// <summary>Something is going on at this time that will end by itself.</summary>
    public bool Busy(double now)
    {
        var busy = now < _pushUntil;
        for (var i = 0; i < 4; i++)
            busy |= _lean[i] != _leanWanted[i] || (double.IsFinite(_leanUntil[i]) && _leanWanted[i] != 0);
        return busy;
    }

    /// <summary>Ends at once all that would end by itself.</summary>
    public void Finish()
    {
        _pushUntil = double.NegativeInfinity;
        for (var i = 0; i < 4; i++)
        {
            if (double.IsFinite(_leanUntil[i]))
                _leanWanted[i] = 0;
            _lean[i] = _leanWanted[i];
        }
    }

    /// <summary>Force on the four corners in N, downward, one step later.</summary>
    public Four Advance(double now, double step)
    {
        for (var i = 0; i < 4; i++)
        {
            if (now >= _leanUntil[i])
                _leanWanted[i] = 0;
            _lean[i] += Math.Clamp(_leanWanted[i] - _lean[i], -LeanRate * step, LeanRate * step);
        }

        if (now < _levelStart || now >= _pushUntil)
            return _lean;
        if (now >= _levelStart + LevelTime)
        {
            _from = _to;
            _levelStart += LevelTime;
            DrawLevels();
        }

        var part = (now - _levelStart) / LevelTime;
        return _lean.Plus(_from.Times(1 - part)).Plus(_to.Times(part));
    }

    void DrawLevels()
    {
        for (var i = 0; i < 4; i++)
            _to[i] = _share[i] * _strength * _noise.Uniform(0, 1);
    }
}
