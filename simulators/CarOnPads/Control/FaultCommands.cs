using CarOnPads.Pads;
using CarOnPads.Runtime;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Control;

/// <summary>What goes wrong with pads and cables.</summary>
static class FaultCommands
{
    public static IEnumerable<Command> All =>
    [
        new("unplug", "Pull a pad's cable: hang-up, and the port's name is gone. The pad goes on.",
            """{"do":"unplug","corner":"LF"}""", Unplug),
        new("replug", "Put the cable back under the same name.",
            """{"do":"replug","corner":"LF"}""", Replug),
        new("freeze", "The pad's firmware hangs (port open, no bytes), or goes on.",
            """{"do":"freeze","corner":"LR","on":true}""", a => OnOff(a, (f, on) => f.Frozen = on)),
        new("freeze-value", "Samples go on, but the counts stay what they are.",
            """{"do":"freeze-value","corner":"LR","on":true}""", a => OnOff(a, (f, on) => f.FrozenValue = on)),
        new("garble", "Part of all bits that arrive wrong; 0 ends it.",
            """{"do":"garble","corner":"RF","bit_error_rate":0.001}""", a => Share(a, "bit_error_rate", 0.5, (f, s) => f.BitErrorRate = s)),
        new("drop", "Part of the samples that are lost; 0 ends it.",
            """{"do":"drop","corner":"RF","share":0.05}""", a => Share(a, "share", 1, (f, s) => f.DropShare = s)),
        new("duplicate", "Part of the samples that are sent twice; 0 ends it.",
            """{"do":"duplicate","corner":"RF","share":0.05}""", a => Share(a, "share", 1, (f, s) => f.DuplicateShare = s)),
        new("silence", "All bytes of a pad are lost for some seconds, while the pad goes on.",
            """{"do":"silence","corner":"RR","seconds":2}""", Silence),
        new("brown-out", "A pad loses its supply for a moment and starts anew: other boot id, sequence from 0.",
            """{"do":"brown-out","corner":"RR"}""", BrownOut),
        new("self-test", "A pad reports a fault of its own: excitation, converter, tilt or temperature.",
            """{"do":"self-test","corner":"LF","fault":"tilt","on":true}""", SelfTest),
    ];

    static Deed Unplug(Arguments a)
    {
        var wheel = a.Wheel();
        return (bay, _) => bay.Port(wheel).Unplug();
    }

    static Deed Replug(Arguments a)
    {
        var wheel = a.Wheel();
        return (bay, reply) =>
        {
            bay.Port(wheel).Replug();
            reply["port"] = bay.Port(wheel).Address;
        };
    }

    static Deed OnOff(Arguments a, Action<PadFaults, bool> set)
    {
        var (wheel, on) = (a.Wheel(), a.Flag("on", true));
        return (bay, _) => set(bay.Pad(wheel).Faults, on);
    }

    static Deed Share(Arguments a, string name, double most, Action<PadFaults, double> set)
    {
        var (wheel, share) = (a.Wheel(), a.Number(name, 0, most));
        return (bay, _) => set(bay.Pad(wheel).Faults, share);
    }

    static Deed Silence(Arguments a)
    {
        var (wheel, seconds) = (a.Wheel(), a.Number("seconds", 0, 3600));
        return (bay, reply) => reply["done_at"] = bay.Pad(wheel).Faults.SilentUntil = bay.Time + seconds;
    }

    static Deed BrownOut(Arguments a)
    {
        var wheel = a.Wheel();
        return (bay, _) => bay.Pad(wheel).BrownOut(bay.Time);
    }

    static Deed SelfTest(Arguments a)
    {
        var (wheel, on) = (a.Wheel(), a.Flag("on", true));
        var fault = a.Text("fault") switch
        {
            "excitation" => PadStatus.ExcitationLow,
            "converter" => PadStatus.ConverterFault,
            "tilt" => PadStatus.TiltFault,
            "temperature" => PadStatus.TemperatureFault,
            var other => throw new SimulatorException("CP-205", $"A pad's self-test knows no fault {other}.", "The faults are excitation, converter, tilt and temperature."),
        };
        return (bay, _) =>
        {
            var faults = bay.Pad(wheel).Faults;
            faults.Reported = on ? faults.Reported | fault : faults.Reported & ~fault;
        };
    }
}
