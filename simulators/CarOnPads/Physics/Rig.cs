namespace CarOnPads.Physics;

/// <summary>
/// The car with its crew on four surfaces: everything mechanical, advanced in fixed steps. Copies completely, so a
/// copy can be asked what will be.
/// </summary>
sealed class Rig
{
    /// <summary>Body above design height when it is jacked clear of the pads, m.</summary>
    public const double ClearHeight = 0.15;

    const double PerchSpeed = 0.0024;  // about one turn a second, m/s at the wheel
    const double JackSpeed = 0.08;
    const double FootSpeed = 0.005;
    const double RunOutSpeed = 0.0002;
    const double RollingSpeed = 0.25;
    const double ClimbingIn = 120;     // N, the unrest of a driver getting in or out
    const double ScrubLeft = 12;       // N, what the last centimetres of rolling leave
    readonly NoiseSource _noise;
    Hands _hands;
    SprungMass _body;
    Motion _motion;
    Surroundings _around;
    Approach _perch;
    Approach _jack = new(Four.Same(Surroundings.Stowed), JackSpeed);
    Approach _feet = new(new Four(), FootSpeed);
    Approach _runOut = new(new Four(), RunOutSpeed);
    double _rollingUntil = double.NegativeInfinity;
    PlacedMass[] _ballast = [];
    long _steps;

    /// <summary>A car at rest, driver in, bars connected, on the pads or raised clear of them.</summary>
    public Rig(CarDescription car, double gravity, long seed, bool raised = false)
    {
        Chassis = new Chassis(car, gravity);
        _noise = new NoiseSource(seed, "crew");
        _hands = new Hands(new NoiseSource(seed, "hands"));
        _perch = new Approach(Chassis.Warp, PerchSpeed);
        _around.FrontBar = _around.RearBar = true;
        DriverAboard = true;
        _body = Aboard();
        if (raised)
        {
            _jack.Wanted = Four.Same(ClearHeight);
            _jack.Finish();
            _motion.Heave = ClearHeight;
            _motion.Hub = Four.Same(ClearHeight - 0.07);
        }

        RestAtOnce();
    }

    Rig(Rig other)
    {
        Chassis = other.Chassis;
        _noise = other._noise.Copy();
        _hands = other._hands.Copy();
        (_body, _motion, _around, _perch, _jack) = (other._body, other._motion, other._around, other._perch, other._jack);
        (_feet, _runOut, _rollingUntil) = (other._feet, other._runOut, other._rollingUntil);
        (_ballast, _steps, DriverAboard, Turns) = (other._ballast, other._steps, other.DriverAboard, other.Turns);
        (RunsOut, Contact) = (other.RunsOut, other.Contact);
    }

    /// <summary>The car's constants.</summary>
    public Chassis Chassis { get; }
    /// <summary>Simulated time, s.</summary>
    public double Time => _steps * CarDynamics.Step;
    /// <summary>The moving state now.</summary>
    public ref readonly Motion Motion => ref _motion;
    /// <summary>What acts on the car now.</summary>
    public ref readonly Surroundings Around => ref _around;
    /// <summary>The driver sits in the car.</summary>
    public bool DriverAboard { get; private set; }
    /// <summary>Turns made at the perches since the start, positive up.</summary>
    public Four Turns { get; private set; }
    /// <summary>Where the contact patches stand on their pads.</summary>
    public ContactPatches Contact { get; private set; } = new();
    /// <summary>Heights of the pads' surfaces now, m.</summary>
    public Four Feet => _feet.Now;
    /// <summary>Suspension friction present.</summary>
    public bool Rubs { get => _around.Friction; set => _around.Friction = value; }
    /// <summary>Tyres grip the pads sideways.</summary>
    public bool Scrubs { get => _around.Scrub; set => _around.Scrub = value; }
    /// <summary>Tyres are not quite round.</summary>
    public bool RunsOut { get; set; }
    /// <summary>A movement that will end by itself is under way.</summary>
    public bool Busy =>
        _hands.Busy(Time) || _perch.Busy || _jack.Busy || _feet.Busy || _runOut.Busy || Time < _rollingUntil;

    /// <summary>A rig that will do the same from here on.</summary>
    public Rig Copy() => new(this);

    /// <summary>Turns one perch. Returns the time when it is done.</summary>
    public double Turn(Wheel wheel, double turns)
    {
        var at = Chassis.Stations[(int)wheel];
        _perch.Wanted[wheel] += turns * at.PerchPitch * at.PerchGain;
        var all = Turns;
        all[wheel] += turns;
        Turns = all;
        return Time + _perch.TimeLeft;
    }

    /// <summary>Moves jack heads: metres above the design height of the body, or null to stow. Returns when it is done.</summary>
    public double Jack(IEnumerable<Wheel> wheels, double? height)
    {
        foreach (var wheel in wheels)
            _jack.Wanted[wheel] = height ?? Surroundings.Stowed;
        return Time + _jack.TimeLeft;
    }

    /// <summary>Sets the surface height of one pad, m. Returns when it is done.</summary>
    public double PadHeight(Wheel wheel, double height)
    {
        _feet.Wanted[wheel] = height;
        return Time + _feet.TimeLeft;
    }

    /// <summary>Lets the driver in or out.</summary>
    public void Seat(bool aboard)
    {
        if (aboard == DriverAboard)
            return;
        DriverAboard = aboard;
        _body = Aboard();
        _hands.Bounce(Four.Of(1, 0.6, 0.6, 0.3), ClimbingIn, Time, Time + 1.5);
    }

    /// <summary>Replaces all ballast.</summary>
    public void Ballast(IEnumerable<PlacedMass> masses)
    {
        _ballast = [.. masses];
        _body = Aboard();
    }

    /// <summary>Connects or disconnects the anti-roll bars.</summary>
    public void Bars(bool front, bool rear) => (_around.FrontBar, _around.RearBar) = (front, rear);

    /// <summary>Somebody puts weight (N) on a corner of the body until a time in s.</summary>
    public void Lean(Wheel wheel, double newtons, double until) => _hands.Lean(wheel, newtons, until);

    /// <summary>The crew bounces the corners for some seconds; shares 0 to 1, strength in N.</summary>
    public double Bounce(in Four shares, double strength, double seconds)
    {
        _hands.Bounce(shares, strength, Time, Time + seconds);
        return Time + seconds;
    }

    /// <summary>The crew rolls the car to and fro on its pads for some seconds, which lets the tyres' scrub go.</summary>
    public double Roll(double seconds)
    {
        _rollingUntil = Time + seconds;
        for (var i = 0; i < 4; i++)
        {
            _around.ScrubAfterRolling[i] = ScrubLeft * _noise.Normal();
            _runOut.Wanted[i] = RunsOut ? Chassis.Stations[i].RunOut * _noise.Normal() : 0;
        }

        Contact = Contact.Moved(_noise);
        _hands.Bounce(Four.Same(1), 40, Time, Time + seconds);
        return _rollingUntil;
    }

    /// <summary>The whole settle: roll, then bounce all corners.</summary>
    public double RollThenBounce(double rollSeconds, double strength, double bounceSeconds)
    {
        var rolled = Roll(rollSeconds);
        _hands.Bounce(Four.Same(1), strength, rolled, rolled + bounceSeconds);
        return rolled + bounceSeconds;
    }

    /// <summary>One step of <see cref="CarDynamics.Step"/>.</summary>
    public void Advance()
    {
        _perch.Advance(CarDynamics.Step);
        _jack.Advance(CarDynamics.Step);
        _feet.Advance(CarDynamics.Step);
        _runOut.Advance(CarDynamics.Step);
        _around.Push = _hands.Advance(Time, CarDynamics.Step);
        _around.Rolling = Time < _rollingUntil ? RollingSpeed : 0;
        TakeMovements();
        var before = _motion.Load;
        CarDynamics.Advance(ref _motion, Chassis, _body, _around);
        for (var i = 0; i < 4; i++)
            if (before[i] == 0 && _motion.Load[i] > 0)
                Contact = Contact.Moved(_noise, (Wheel)i);
        _steps++;
    }

    /// <summary>A change to the moving state.</summary>
    public delegate void Nudging(ref Motion motion);

    /// <summary>Changes the moving state at once, as no crew can: for tests of the physics.</summary>
    public void Nudge(Nudging nudge) => nudge(ref _motion);

    /// <summary>Skips every movement and waits for nothing: the car rests where it would without friction's memory.</summary>
    public void RestAtOnce()
    {
        FinishMovements();
        _motion = Rest();
    }

    /// <summary>Static rest in the surroundings of this instant, with friction holding what it holds.</summary>
    public Motion Rest() => Equilibrium.Of(_motion, Chassis, _body, _around);

    /// <summary>Ends every movement that would end by itself, at once.</summary>
    public void FinishMovements()
    {
        _hands.Finish();
        _perch.Finish();
        _jack.Finish();
        _feet.Finish();
        _runOut.Finish();
        _rollingUntil = double.NegativeInfinity;
        _around.Rolling = 0;
        _around.Push = _hands.Advance(Time, 0);
        TakeMovements();
    }

    void TakeMovements()
    {
        _around.FreeLength = _perch.Now;
        _around.Jack = _jack.Now;
        _around.Ground = _feet.Now.Plus(_runOut.Now);
    }

    SprungMass Aboard() =>
        SprungMass.Of(Chassis, DriverAboard ? _ballast.Append(Chassis.Description.Driver) : _ballast);
}
