using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Bus;

/// <summary>
/// A pad's sample in registers, the same in both tables: 0 to 7 four cells (s32, high half first), 8 pitch and 9 roll (s16, 0.001 degree), 10
/// temperature (s16, 0.01 °C), 11 status bits. An inclinometer has 0 pitch, 1 roll, 2 temperature. What is absent reads -32768.
/// </summary>
static class SlaveRegisters
{
    const short Absent = short.MinValue;

    public static ushort[] OfPad(in SampleFrame sample)
    {
        var registers = new ushort[12];
        for (var cell = 0; cell < sample.Cells && cell < 4; cell++)
            (registers[2 * cell], registers[2 * cell + 1]) = ((ushort)(sample[cell] >> 16), (ushort)sample[cell]);
        OfTilt(sample).CopyTo(registers, 8);
        registers[11] = (ushort)sample.Status;
        return registers;
    }

    public static ushort[] OfTilt(in SampleFrame sample) =>
        [Steps(sample.PitchDegrees, 1000), Steps(sample.RollDegrees, 1000), Steps(sample.TemperatureCelsius, 100)];

    static ushort Steps(double? value, double perUnit) => (ushort)(value is { } number ? (short)Math.Round(number * perUnit) : Absent);
}
