using CarOnPads.Cells;
using CarOnPads.Physics;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Pads;

/// <summary>
/// A pad's firmware: it samples its cells, says hello, takes settings, and can be broken in many ways. Driven by
/// simulated time; speaks bytes.
/// </summary>
sealed class Pad
{
    /// <summary>Seconds between two hellos.</summary>
    public const double HelloPeriod = 5;
    /// <summary>Slowest rate a pad takes, samples a second.</summary>
    public const double SlowestHertz = 10;
    /// <summary>Fastest rate a pad takes, samples a second.</summary>
    public const double FastestHertz = 1000;

    const double RestartSeconds = 0.8;
    const string Firmware = "car-on-pads 1";
    readonly Imperfections _imperfections;
    readonly Platform _platform;
    readonly Inclinometer _inclinometer;
    readonly PadTemperature _temperature;
    readonly Seat _seat;
    readonly NoiseSource _boots;
    readonly NoiseSource _chance;
    readonly Wire _wire;
    readonly HostFrames _host;
    readonly TextLine _text;
    readonly bool _saysTilt;
    readonly double _drift;
    readonly byte[] _frame = new byte[PadFrameWriter.MaxFrameLength];
    readonly int[] _counts = new int[Platform.Cells];
    SampleClock _clock;
    double _nextHello;
    double _offUntil = double.NegativeInfinity;
    PadStatus _once = PadStatus.Restarted;
    uint _bootId;
    uint _sequence;

    /// <summary>A pad that starts at time 0.</summary>
    public Pad(Wheel wheel, long seed, double hertz, Imperfections imperfections, Speech speech = Speech.PadFrames, TextStyle text = TextStyle.Usual, bool saysTilt = true)
    {
        (Wheel, Speech, _saysTilt) = (wheel, speech, saysTilt);
        SerialNumber = $"SLP-{1001 + (int)wheel}";
        _imperfections = imperfections;
        _platform = new Platform(seed, SerialNumber, NominalKgPerCount(wheel), imperfections);
        _inclinometer = new Inclinometer(seed, SerialNumber, imperfections);
        _temperature = new PadTemperature(seed, SerialNumber, imperfections);
        _seat = new Seat(seed, SerialNumber, imperfections);
        _boots = new NoiseSource(seed, SerialNumber + " boots");
        _chance = new NoiseSource(seed, SerialNumber + " chance");
        _wire = new Wire(seed, SerialNumber, imperfections, Faults);
        _text = new TextLine(text, device: 1 + (int)wheel);
        _host = new HostFrames(this);
        var clock = new NoiseSource(seed, SerialNumber + " clock");
        _drift = clock.Uniform(-60e-6, 60e-6);
        var (device, phase) = (clock.Uniform(0, uint.MaxValue), clock.Uniform(0, 1));
        var shifted = imperfections[Imperfection.ClockOffset];
        _clock = new SampleClock(shifted ? phase / hertz : 0, shifted ? device : 0, hertz, Drift);
        _bootId = (uint)_boots.Next();
    }

    /// <summary>Which wheel stands on it.</summary>
    public Wheel Wheel { get; private set; }
    /// <summary>What it speaks.</summary>
    public Speech Speech { get; }
    /// <summary>SLP-1001 to SLP-1004.</summary>
    public string SerialNumber { get; }
    /// <summary>Nominal, the same for the pad's cells.</summary>
    public double KgPerCount => _platform.KgPerCount;
    /// <summary>Differs at each start.</summary>
    public uint BootId => _bootId;
    /// <summary>Samples a second of the pad's own time.</summary>
    public double Hertz => _clock.Hertz;
    /// <summary>Number of the next sample.</summary>
    public uint Sequence => _sequence;
    /// <summary>Seconds it has been asked to blink.</summary>
    public int Blinking { get; internal set; }
    /// <summary>True pitch of the surface, degrees, nose down positive (ISO 8855).</summary>
    public double PitchDegrees { get; set; }
    /// <summary>True roll of the surface, degrees, right side down positive (ISO 8855).</summary>
    public double RollDegrees { get; set; }
    /// <summary>What its inclinometer says on level ground, degrees, in the pad's own axes; mounting error and noise come on top.</summary>
    public (double Pitch, double Roll) TiltZero { get => _inclinometer.Zero; set => _inclinometer.Zero = value; }
    /// <summary>It lies the other way round than at the start.</summary>
    public bool IsTurned => _seat.IsTurned;
    /// <summary>The metal, °C.</summary>
    public double TemperatureCelsius => _temperature.Metal;
    /// <summary>The truth about its cells: change of zero with the imperfection <c>temperature</c>, kg per kelvin of the metal.</summary>
    public double ZeroPerKelvin => _platform.ZeroPerKelvin;
    /// <summary>What is wrong with it.</summary>
    public PadFaults Faults { get; } = new();
    /// <summary>True time of the next sample, s.</summary>
    public double NextSample => _clock.Next;

    /// <summary>The newest sample as the pad says it; absent before the first.</summary>
    internal SampleFrame? LastSaid { get; private set; }
    /// <summary>The newest sample with its tilt, wherever that is said.</summary>
    internal SampleFrame? LastTrue { get; private set; }

    double Drift => _imperfections[Imperfection.ClockDrift] ? _drift : 0;

    /// <summary>Loses its supply at this time and starts anew a little later.</summary>
    public void BrownOut(double now) => _offUntil = now + RestartSeconds;

    /// <summary>Stands under another wheel from now on; its plug was pulled for the way.</summary>
    internal void CarryTo(Wheel wheel, double now)
    {
        Wheel = wheel;
        BrownOut(now);
    }

    /// <summary>Somebody turns it by half a turn about the vertical, at its place. Returns when it lies there.</summary>
    internal double TurnRound(double now) => _seat.Turn(now);

    /// <summary>Sets the air around the pad, °C; the metal follows slowly or at once.</summary>
    public void Air(double celsius, bool atOnce)
    {
        _temperature.Air = celsius;
        if (atOnce)
            _temperature.Equalise();
    }

    /// <summary>The sun would make the metal so much warmer than the air, K; 0 is shade.</summary>
    public void Sun(double kelvin) => _temperature.Sun = kelvin;

    /// <summary>Takes a clock's changed imperfections into account.</summary>
    public void ImperfectionsChanged() => _clock.Change(_clock.Hertz, Drift);

    /// <summary>Reads bytes from the host.</summary>
    public void Receive(ReadOnlySpan<byte> bytes, double now)
    {
        if (Speech == Speech.PadFrames && Answers(now))
            _host.Receive(bytes, now);
    }

    /// <summary>Its firmware runs.</summary>
    internal bool Answers(double now) => !Faults.Frozen && now >= _offUntil;

    /// <summary>The numbering jumps ahead, as when samples are lost inside the pad.</summary>
    public void SkipSequence(uint by) => _sequence += by;

    /// <summary>Hands the bytes that are due to the port.</summary>
    public void Release(double now, Action<ReadOnlySpan<byte>> host) => _wire.Release(now, host);

    /// <summary>Takes the sample that is due.</summary>
    /// <param name="kg">Load on the surface, force / local g, normal to level ground.</param>
    /// <param name="forwardMoment">kg m about the middle of the pad.</param>
    /// <param name="leftMoment">kg m about the middle of the pad.</param>
    internal void Sample(double kg, double forwardMoment, double leftMoment)
    {
        var now = _clock.Next;
        _temperature.Advance(1 / _clock.Hertz);
        if (IsRunning(now))
        {
            if (now >= _nextHello && Speech == Speech.PadFrames)
                Hello(now);
            Measure(now, _seat.InOwnAxes(PitchDegrees, RollDegrees, now), (kg, _seat.Sign * forwardMoment, _seat.Sign * leftMoment));
        }

        _clock.Advance();
    }

    internal void Hello(double now)
    {
        _nextHello = now + HelloPeriod;
        var hello = new HelloFrame
        {
            BootId = _bootId,
            Cells = Platform.Cells,
            SampleRateMillihertz = (uint)Math.Round(1000 * _clock.Hertz),
            CapacityGrams = (uint)(1000 * Platform.CapacityKg),
            LowestCount = Platform.LowestCount,
            HighestCount = Platform.HighestCount,
            Features = PadFeatures.Tilt | PadFeatures.Temperature | PadFeatures.Settings,
            SerialNumber = SerialNumber,
            Firmware = Firmware,
        };
        _wire.Send(_frame.AsSpan(0, PadFrameWriter.Write(hello, _frame)), now);
    }

    internal void Acknowledge(AckFrame ack, double now) =>
        _wire.Send(_frame.AsSpan(0, PadFrameWriter.Write(ack, _frame)), now);

    internal void SetRate(double hertz)
    {
        _clock.Change(hertz, Drift);
        _once |= PadStatus.SettingChanged;
    }

    // Different pads, different spans: a wrong assignment of pads to corners shows.
    static double NominalKgPerCount(Wheel wheel) => 0.0005 + 0.000004 * (int)wheel;

    bool IsRunning(double now)
    {
        if (now < _offUntil || Faults.Frozen)
            return false;
        if (double.IsFinite(_offUntil))
            Restart(now);
        return true;
    }

    void Restart(double now)
    {
        _offUntil = double.NegativeInfinity;
        _bootId = (uint)_boots.Next();
        _sequence = 0;
        _once = PadStatus.Restarted;
        _nextHello = now;
        _clock = new SampleClock(now, 0, _clock.Hertz, Drift);
    }

    void Measure(double now, (double Pitch, double Roll) surface, (double Kg, double Forward, double Left) on)
    {
        var load = new PlatformLoad(on.Kg, on.Forward, on.Left, CosineOf(surface.Pitch, surface.Roll));
        var status = _once | Faults.Reported;
        _once = PadStatus.None;
        Span<int> fresh = stackalloc int[Platform.Cells];
        status |= (PadStatus)_platform.Read(load, now, 1 / _clock.Hertz, _temperature.Metal - PadTemperature.Reference, fresh);
        if (!Faults.FrozenValue)
            fresh.CopyTo(_counts);

        var (pitch, roll) = _inclinometer.Read(surface.Pitch, surface.Roll);
        var celsius = _temperature.Read();
        var tiltGone = Faults.Reported.HasFlag(PadStatus.TiltFault);
        LastTrue = Sample(tiltGone ? null : (pitch, roll), celsius, status);
        LastSaid = _saysTilt ? LastTrue : Sample(null, celsius, status & ~PadStatus.TiltFault);
        _sequence++;
        if (Speech == Speech.PadFrames)
            Transmit(_frame.AsSpan(0, PadFrameWriter.Write(LastSaid.Value, _frame)), now);
        else if (Speech == Speech.Text)
            Transmit(_text.Of(LastSaid.Value, KgPerCount), now);
    }

    SampleFrame Sample((double Pitch, double Roll)? tilt, double celsius, PadStatus status) => new(
        _sequence, _clock.DeviceMicroseconds, status, tilt?.Pitch, tilt?.Roll,
        Faults.Reported.HasFlag(PadStatus.TemperatureFault) ? null : celsius, _counts);

    void Transmit(ReadOnlySpan<byte> frame, double now)
    {
        if (Faults.DropShare > 0 && _chance.Uniform(0, 1) < Faults.DropShare)
            return;
        _wire.Send(frame, now);
        if (Faults.DuplicateShare > 0 && _chance.Uniform(0, 1) < Faults.DuplicateShare)
            _wire.Send(frame, now);
    }

    static double CosineOf(double pitch, double roll)
    {
        var p = Math.Tan(pitch * Math.PI / 180);
        var r = Math.Tan(roll * Math.PI / 180);
        return 1 / Math.Sqrt(1 + p * p + r * r);
    }
}
