using System.Globalization;
using CarOnPads.Bus;
using CarOnPads.Pads;
using CarOnPads.Physics;
using CarOnPads.Runtime;
using ScaleLink.Protocol.Modbus;

namespace CarOnPads.Bench;

/// <summary>Who is on the bus, under which address: pads 1 to 4 unless said otherwise, inclinometers 11 to 14, in the order LF, RF, LR, RR.</summary>
static class BusSlaves
{
    public static byte PadAddress(Wheel wheel, BayOptions options) => options.Slaves.TryGetValue(wheel, out var address) ? address : (byte)(1 + (int)wheel);

    public static byte TiltAddress(Wheel wheel) => (byte)(11 + (int)wheel);

    /// <summary>Addresses of pads, from <c>LF=17,RR=203</c>.</summary>
    /// <exception cref="SimulatorException">CP-105 no such address; CP-107 no such corner.</exception>
    public static IReadOnlyDictionary<Wheel, byte> Parse(string text)
    {
        Dictionary<Wheel, byte> addresses = [];
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (part.Split('=') is not [var corner, var number] || !Enum.TryParse<Wheel>(corner, out var wheel) || !Enum.IsDefined(wheel))
                throw new SimulatorException("CP-107", $"--slaves: {part} is no corner with an address.", "Write LF=17.");
            if (!byte.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var address) || address is < ModbusRequest.LowestSlave or > ModbusRequest.HighestSlave)
                throw new SimulatorException("CP-105", $"--slaves: {number} is no address.", $"Give {ModbusRequest.LowestSlave} to {ModbusRequest.HighestSlave}.");
            addresses[wheel] = address;
        }

        return addresses;
    }

    /// <exception cref="SimulatorException">CP-109 two of one address.</exception>
    public static IReadOnlyList<RtuSlave> Of(IEnumerable<Pad> pads, BayOptions options)
    {
        List<RtuSlave> slaves = [];
        foreach (var pad in pads)
        {
            if (pad.Speech == Speech.Modbus)
                slaves.Add(Slave(pad, PadAddress(pad.Wheel, options), isInclinometer: false, options));
            if (options.Speaking.TiltOnBus)
                slaves.Add(Slave(pad, TiltAddress(pad.Wheel), isInclinometer: true, options));
        }

        if (slaves.GroupBy(s => s.Address).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new SimulatorException("CP-109", $"Two slaves have the address {twice.Key}.", "Give each its own with --slaves; inclinometers have 11 to 14. A second device under one address is the command twin.");
        return slaves;
    }

    static RtuSlave Slave(Pad pad, byte address, bool isInclinometer, BayOptions options)
    {
        var name = $"{pad.SerialNumber} slave {address}";
        return new RtuSlave(address, pad, isInclinometer, new Wire(options.Seed, name, options.Imperfections, pad.Faults), new NoiseSource(options.Seed, name + " chance"));
    }
}
