using CarOnPads.Bus;
using CarOnPads.Cells;
using CarOnPads.Pads;
using CarOnPads.Physics;
using CarOnPads.Ports;
using CarOnPads.Runtime;

namespace CarOnPads.Bench;

/// <summary>
/// The whole bench: car, crew and four pads, advanced by simulated time. Knows no clock: a program advances it with
/// real time, a test as fast as it likes. The same seed and the same commands at the same times give the same bytes.
/// Not thread-safe.
/// </summary>
sealed class Bay : IDisposable
{
    const double PlacingSpeed = 40; // kg/s, how fast hands put masses down
    readonly IPadPort[] _ports = new IPadPort[4];
    readonly Pad[] _pads;
    readonly RtuBus? _bus;
    readonly IPadPort? _busPort;
    readonly byte[] _fromHost = new byte[4096];
    readonly PriorityQueue<Action<Bay>, (double At, int Order)> _timetable = new();
    Four _loadBefore;
    Approach _masses = new(new Four(), PlacingSpeed);
    readonly (double Forward, double Left)[] _massPlace = new (double, double)[4];
    int _scheduled;

    /// <summary>Sets the bench up.</summary>
    /// <param name="options">Car, seed, rate and so on.</param>
    /// <param name="port">The cable of each pad that has its own; the bay owns it from here on.</param>
    /// <param name="bus">The cable that all Modbus slaves share; needed when there are some.</param>
    public Bay(BayOptions options, Func<Wheel, IPadPort> port, Func<IPadPort>? bus = null)
    {
        Options = options;
        Rig = new Rig(options.Car, options.Gravity, options.Seed, options.Raised);
        _loadBefore = Rig.Motion.Load;
        ApplyImperfections();
        var wheels = Enum.GetValues<Wheel>();
        var speaking = options.Speaking;
        _pads = [.. wheels.Select(w => new Pad(w, options.Seed, options.Hertz, options.Imperfections, speaking[(int)w], options.TextStyles.GetValueOrDefault(w), saysTilt: !speaking.TiltOnBus))];
        foreach (var (wheel, zero) in options.TiltZeros)
            Pad(wheel).TiltZero = zero;
        _bus = speaking.NeedsBus ? new RtuBus(BusSlaves.Of(_pads, options)) : null;
        try
        {
            _busPort = speaking.NeedsBus ? bus!() : null;
            foreach (var wheel in wheels)
                _ports[(int)wheel] = speaking[(int)wheel] == Speech.Modbus ? _busPort! : port(wheel);
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>What it was made of.</summary>
    public BayOptions Options { get; }
    /// <summary>Car and crew.</summary>
    public Rig Rig { get; }
    /// <summary>Simulated time, s.</summary>
    public double Time => Rig.Time;
    /// <summary>Which imperfections are on.</summary>
    public Imperfections Imperfections => Options.Imperfections;

    /// <summary>The pad under one wheel.</summary>
    public Pad Pad(Wheel wheel) => _pads[(int)wheel];

    /// <summary>The cable of that pad.</summary>
    public IPadPort Port(Wheel wheel) => _ports[(int)wheel];

    /// <summary>The cable that all Modbus slaves share; absent when there are none.</summary>
    public IPadPort? BusPort => _busPort;

    /// <summary>The host's adapter hears on the bus what it sends itself, or no longer.</summary>
    public void Echo(bool on)
    {
        if (_bus is not null)
            _bus.Echoes = on;
    }

    /// <summary>Loads on the pads' surfaces at this instant, kg.</summary>
    public Four Loads => Rig.Motion.Load.Times(1 / Options.Gravity).Plus(_masses.Now);

    /// <summary>
    /// The static loads in kg that the pads come to carry when everything asked for has happened and nobody touches
    /// the car again: see <see cref="StaticTruth"/>.
    /// </summary>
    public Four TrueLoads() => OnPads(StaticTruth.Of(Rig));

    /// <summary>Loads in kg on the pads' surfaces when the car is in this rest and all masses are in place.</summary>
    public Four OnPads(in Motion rest) => rest.Load.Times(1 / Options.Gravity).Plus(_masses.Wanted);

    /// <summary>Does something at a time, or at once when the time is past.</summary>
    public void Schedule(double at, Action<Bay> action) => _timetable.Enqueue(action, (at, _scheduled++));

    /// <summary>Puts a mass on a pad in place of the one before; 0 takes it away. Returns when it stands.</summary>
    /// <param name="wheel">Which pad.</param>
    /// <param name="kg">Mass.</param>
    /// <param name="forward">m from the middle.</param>
    /// <param name="left">m from the middle.</param>
    /// <param name="atOnce">Without the time that hands take.</param>
    public double PutMass(Wheel wheel, double kg, double forward, double left, bool atOnce = false)
    {
        _masses.Wanted[wheel] = kg;
        if (atOnce)
            _masses.Now[wheel] = kg;
        if (kg > 0)
            _massPlace[(int)wheel] = (forward, left);
        return Time + _masses.TimeLeft;
    }

    /// <summary>
    /// Moves every pad on by so many places: for 1 the pad of RF goes to LF, that of LR to RF, RR to LR, LF to RR. The cable of
    /// a place is plugged into the pad that comes to it.
    /// </summary>
    /// <exception cref="SimulatorException">CP-208 something stands on the pads, or they do not say who they are.</exception>
    public void MovePads(int places)
    {
        if (Enum.GetValues<Wheel>().Any(w => Loads[w] > 1e-6))
            throw new SimulatorException("CP-208", "Something stands on the pads.", "Jack the car up and take the masses away first.");
        if (_pads.Any(p => p.Speech != Speech.PadFrames))
            throw new SimulatorException("CP-208", "Only pads that speak frames say who they are.", "Start with --speak pad-frames.");
        var before = (Pad[])_pads.Clone();
        foreach (var wheel in Enum.GetValues<Wheel>())
        {
            _pads[(int)wheel] = before[((int)wheel + places) % before.Length];
            Pad(wheel).CarryTo(wheel, Time);
        }
    }

    /// <summary>Lifts a pad, turns it by half a turn about the vertical and puts it down at its place. Returns when it lies there.</summary>
    /// <exception cref="SimulatorException">CP-208 something stands on it.</exception>
    public double TurnPad(Wheel wheel)
    {
        if (Loads[wheel] > 1e-6)
            throw new SimulatorException("CP-208", "Something stands on the pad.", "Jack the car up and take the masses away first.");
        return Pad(wheel).TurnRound(Time);
    }

    /// <summary>Mass that stands, or is being put, on a pad, kg.</summary>
    public double MassOn(Wheel wheel) => _masses.Wanted[wheel];

    /// <summary>Switches an imperfection.</summary>
    public void SetImperfection(Imperfection imperfection, bool on)
    {
        Imperfections.Set(imperfection, on);
        ApplyImperfections();
        foreach (var pad in _pads)
            pad.ImperfectionsChanged();
    }

    /// <summary>Somebody asked the program to end.</summary>
    public bool Ended { get; private set; }

    /// <summary>Asks the program to end.</summary>
    public void Quit() => Ended = true;

    /// <summary>Lets time pass up to <paramref name="time"/> s, and exchanges bytes with the ports.</summary>
    public void AdvanceTo(double time)
    {
        Listen();
        while (Time + CarDynamics.Step / 2 < time)
        {
            while (_timetable.TryPeek(out var action, out var due) && due.At <= Time)
            {
                _timetable.Dequeue();
                action(this);
            }

            _loadBefore = Rig.Motion.Load;
            Rig.Advance();
            _masses.Advance(CarDynamics.Step);
            foreach (var pad in _pads)
                while (pad.NextSample <= Time)
                    Sample(pad);
        }

        for (var i = 0; i < _pads.Length; i++)
            _pads[i].Release(Time, _ports[i].Write);
        _bus?.Release(Time, _busPort!.Write);
    }

    /// <summary>Pulls all cables for good.</summary>
    public void Dispose()
    {
        foreach (IPadPort? port in _ports)
            port?.Dispose(); // the last may be missing when the bench could not be set up
        _busPort?.Dispose();
    }

    void Listen()
    {
        int read;
        while (_busPort is not null && (read = _busPort.Read(_fromHost)) > 0)
            _bus!.Receive(_fromHost.AsSpan(0, read), Time);
        for (var i = 0; i < _pads.Length; i++)
        {
            while ((read = _ports[i].Read(_fromHost)) > 0)
                _pads[i].Receive(_fromHost.AsSpan(0, read), Time);
        }
    }

    // The car is known at the ends of a step; the sample lies between them.
    void Sample(Pad pad)
    {
        var part = Math.Clamp(1 - (Time - pad.NextSample) / CarDynamics.Step, 0, 1);
        var wheel = pad.Wheel;
        var tyre = (_loadBefore[wheel] + part * (Rig.Motion.Load[wheel] - _loadBefore[wheel])) / Options.Gravity;
        var mass = _masses.Now[wheel];
        var place = _massPlace[(int)wheel];
        var contact = Imperfections[Imperfection.Position] ? Rig.Contact : ContactPatches.Centred;
        pad.Sample(
            tyre + mass,
            tyre * contact.Forward[wheel] + mass * place.Forward,
            tyre * contact.Left[wheel] + mass * place.Left);
    }

    void ApplyImperfections()
    {
        Rig.Rubs = Imperfections[Imperfection.Friction];
        Rig.Scrubs = Imperfections[Imperfection.Scrub];
        Rig.RunsOut = Imperfections[Imperfection.RunOut];
    }
}
