using CarOnPads.Bus;
using CarOnPads.Pads;
using CarOnPads.Physics;

namespace CarOnPads.Bench;

/// <summary>Who is on the bus, under which address: pads 1 to 4, inclinometers 11 to 14, in the order LF, RF, LR, RR.</summary>
static class BusSlaves
{
    public static byte PadAddress(Wheel wheel) => (byte)(1 + (int)wheel);

    public static byte TiltAddress(Wheel wheel) => (byte)(11 + (int)wheel);

    public static IEnumerable<RtuSlave> Of(IEnumerable<Pad> pads, BayOptions options)
    {
        foreach (var pad in pads)
        {
            if (pad.Speech == Speech.Modbus)
                yield return Slave(pad, PadAddress(pad.Wheel), isInclinometer: false, options);
            if (options.Speaking.TiltOnBus)
                yield return Slave(pad, TiltAddress(pad.Wheel), isInclinometer: true, options);
        }
    }

    static RtuSlave Slave(Pad pad, byte address, bool isInclinometer, BayOptions options)
    {
        var name = $"{pad.SerialNumber} slave {address}";
        return new RtuSlave(address, pad, isInclinometer, new Wire(options.Seed, name, options.Imperfections, pad.Faults), new NoiseSource(options.Seed, name + " chance"));
    }
}
