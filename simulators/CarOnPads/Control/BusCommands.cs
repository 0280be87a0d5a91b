using CarOnPads.Pads;

namespace CarOnPads.Control;

/// <summary>What goes wrong on a bus and with messages of any kind.</summary>
static class BusCommands
{
    public static IEnumerable<Command> All =>
    [
        new("truncate", "Part of the messages that break off in the middle; 0 ends it.",
            """{"do":"truncate","corner":"RF","share":0.05}""", a => Share(a, (f, s) => f.TruncateShare = s)),
        new("noise", "Random bytes before part of the messages; 0 ends it.",
            """{"do":"noise","corner":"RF","share":0.2}""", a => Share(a, (f, s) => f.NoiseShare = s)),
        new("skip-sequence", "A pad's own numbering jumps ahead once.",
            """{"do":"skip-sequence","corner":"LF","by":1000}""", Skip),
        new("exception", "A Modbus slave refuses everything with this exception; 0 ends it.",
            """{"do":"exception","corner":"LR","code":4}""", Exception),
        new("wrong-check", "Part of a Modbus slave's answers that carry a wrong CRC; 0 ends it.",
            """{"do":"wrong-check","corner":"LR","share":0.1}""", a => Share(a, (f, s) => f.WrongCheckShare = s)),
        new("twin", "A second Modbus slave with the same address answers too, behind this one or 20 ms before it.",
            """{"do":"twin","corner":"LR","on":true}""", Twin),
        new("echo", "The host's adapter hears on the bus what it sends itself.",
            """{"do":"echo","on":true}""", Echo),
    ];

    static Deed Share(Arguments a, Action<PadFaults, double> set)
    {
        var (wheel, share) = (a.Wheel(), a.Number("share", 0, 1));
        return (bay, _) => set(bay.Pad(wheel).Faults, share);
    }

    static Deed Skip(Arguments a)
    {
        var (wheel, by) = (a.Wheel(), a.Number("by", 1, 1e9));
        return (bay, _) => bay.Pad(wheel).SkipSequence((uint)by);
    }

    static Deed Exception(Arguments a)
    {
        var (wheel, code) = (a.Wheel(), a.Number("code", 0, 255));
        return (bay, _) => bay.Pad(wheel).Faults.Exception = (byte)code;
    }

    static Deed Twin(Arguments a)
    {
        var (wheel, on, isFirst) = (a.Wheel(), a.Flag("on", true), a.Flag("first", false));
        return (bay, _) => (bay.Pad(wheel).Faults.Twin, bay.Pad(wheel).Faults.TwinFirst) = (on, on && isFirst);
    }

    static Deed Echo(Arguments a)
    {
        var on = a.Flag("on", true);
        return (bay, _) => bay.Echo(on);
    }
}
