using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.PadFrames;
using ScaleLink.Protocol.Readings;

namespace ScaleLink.Protocol.Tests.Modbus;

public class RegisterMapTests
{
    const ModbusFunction Holding = ModbusFunction.ReadHoldingRegisters;
    static readonly FieldRule Load = new() { Meaning = FieldMeaning.Load, Unit = FieldUnit.Count };

    // 0x1234ABCD in both orders; the values are arithmetic, no source needed.
    [Theory]
    [InlineData(RegisterType.U16, WordOrder.HighFirst, "FFFE", 65534)]
    [InlineData(RegisterType.S16, WordOrder.HighFirst, "FFFE", -2)]
    [InlineData(RegisterType.U32, WordOrder.HighFirst, "1234ABCD", 0x1234ABCD)]
    [InlineData(RegisterType.U32, WordOrder.LowFirst, "ABCD1234", 0x1234ABCD)]
    [InlineData(RegisterType.S32, WordOrder.HighFirst, "FFFFFFFE", -2)]
    [InlineData(RegisterType.S32, WordOrder.LowFirst, "FFFEFFFF", -2)]
    [InlineData(RegisterType.F32, WordOrder.HighFirst, "C2F68000", -123)]
    [InlineData(RegisterType.F32, WordOrder.LowFirst, "8000C2F6", -123)]
    internal void Every_type_in_every_order(RegisterType type, WordOrder order, string bytes, int value)
    {
        var image = new RegisterImage(new RegisterMap([new RegisterField(Holding, 100, type, order, Load)]));
        image.Store(0, Convert.FromHexString(bytes));
        Assert.Equal(value, image.Read()[0]);
    }

    [Fact]
    public void Neighbours_share_a_question_and_holes_do_not()
    {
        var map = new RegisterMap(
        [
            Field(Holding, 4, RegisterType.F32, 2), Field(Holding, 2, RegisterType.F32, 1), Field(Holding, 0, RegisterType.F32, 0),
            Field(Holding, 9, RegisterType.U16, 3), Field(ModbusFunction.ReadInputRegisters, 6, RegisterType.U16, 4),
        ]);
        Assert.Equal(
            [new RegisterBlock(Holding, 0, 6), new RegisterBlock(Holding, 9, 1), new RegisterBlock(ModbusFunction.ReadInputRegisters, 6, 1)],
            map.Blocks);
        var long125 = new RegisterMap([.. Enumerable.Range(0, 8).Select(k => Field(Holding, k == 7 ? 124 : 2 * k, RegisterType.U32, k))]);
        Assert.All(long125.Blocks, block => Assert.InRange(block.Count, 1, 125));
    }

    [Fact]
    public void Units_scale_and_bits_reach_the_reading()
    {
        var map = new RegisterMap(
        [
            new RegisterField(Holding, 0, RegisterType.F32, WordOrder.HighFirst, Load with { Unit = FieldUnit.Kilogram }),
            new RegisterField(Holding, 2, RegisterType.S16, WordOrder.HighFirst, Rule(FieldMeaning.Pitch, FieldUnit.Degree, 0.01)),
            new RegisterField(Holding, 3, RegisterType.S16, WordOrder.HighFirst, Rule(FieldMeaning.Roll, FieldUnit.Milliradian, 0.1)),
            new RegisterField(Holding, 4, RegisterType.U16, WordOrder.HighFirst, Rule(FieldMeaning.Temperature, FieldUnit.Fahrenheit, 0.1)),
            new RegisterField(Holding, 5, RegisterType.U16, WordOrder.HighFirst, Rule(FieldMeaning.Status, FieldUnit.Bits, 1) with
            {
                Bits = [new StatusBit(3, PadStatus.ExcitationLow), new StatusBit(15, PadStatus.ConverterFault)],
            }),
        ]);
        var image = new RegisterImage(map);
        image.Store(0, Convert.FromHexString("42F60000" + "FF85" + "0064" + "02A8" + "0009"));
        var reading = image.Read();
        Assert.Equal(1_230_000, reading[0]);
        Assert.Equal(-1.23, reading.PitchDegrees!.Value, 9);
        Assert.Equal(0.572957795, reading.RollDegrees!.Value, 9);
        Assert.Equal(20, reading.TemperatureCelsius!.Value, 9);
        Assert.Equal(PadStatus.ExcitationLow, reading.Status);
    }

    // Sources: the pound is exact in tests/reference/unit-conversions-exact.json.
    [Theory]
    [InlineData(FieldUnit.Gram, 1000, 10_000)]
    [InlineData(FieldUnit.Kilogram, 1, 10_000)]
    [InlineData(FieldUnit.Pound, 100, 453_592)]
    internal void A_mass_becomes_tenths_of_a_gram(FieldUnit unit, int value, int counts)
    {
        var image = new RegisterImage(new RegisterMap([new RegisterField(Holding, 0, RegisterType.U16, WordOrder.HighFirst, Load with { Unit = unit })]));
        image.Store(0, [(byte)(value >> 8), (byte)value]);
        Assert.Equal(counts, image.Read()[0]);
        Assert.Equal(0.0001, FieldUnits.MassStepKg);
    }

    [Theory]
    [InlineData("7FC00000", PadStatus.ConverterFault)]
    [InlineData("7F800000", PadStatus.ConverterFault)]
    [InlineData("501502F9", PadStatus.ConverterFault)]
    internal void A_load_that_cannot_be_is_a_fault_and_no_load(string bytes, PadStatus status)
    {
        var image = new RegisterImage(new RegisterMap([new RegisterField(Holding, 0, RegisterType.F32, WordOrder.HighFirst, Load)]));
        image.Store(0, Convert.FromHexString(bytes));
        Assert.Equal(status, image.Read().Status);
    }

    [Fact]
    public void A_tilt_or_temperature_that_cannot_be_is_absent_and_told()
    {
        var image = new RegisterImage(new RegisterMap(
        [
            new RegisterField(Holding, 0, RegisterType.S16, WordOrder.HighFirst, Rule(FieldMeaning.Pitch, FieldUnit.Degree, 1)),
            new RegisterField(Holding, 1, RegisterType.S16, WordOrder.HighFirst, Rule(FieldMeaning.Temperature, FieldUnit.Celsius, 1)),
            new RegisterField(Holding, 2, RegisterType.S16, WordOrder.HighFirst, Rule(FieldMeaning.Roll, FieldUnit.Degree, 0.001) with { Absent = -32768 }),
        ]));
        image.Store(0, [0x7F, 0xFF, 0x80, 0x00, 0x80, 0x00]);
        var reading = image.Read();
        Assert.Null(reading.PitchDegrees);
        Assert.Null(reading.RollDegrees);
        Assert.Null(reading.TemperatureCelsius);
        Assert.Equal(PadStatus.TiltFault | PadStatus.TemperatureFault, reading.Status);
    }

    [Fact]
    public void A_map_that_contradicts_itself_is_refused_with_its_reason()
    {
        Assert.Contains(RegisterMap.Problems([]), p => p.Contains("no register"));
        Assert.Contains(RegisterMap.Problems([Field(Holding, 0, RegisterType.U16, 0), Field(Holding, 1, RegisterType.U16, 0)]), p => p.Contains("twice"));
        Assert.Contains(RegisterMap.Problems([Field(Holding, 0, RegisterType.U16, 1)]), p => p.Contains("without a gap"));
        Assert.Contains(RegisterMap.Problems([Field(Holding, 65535, RegisterType.U32, 0)]), p => p.Contains("second half"));
        Assert.Contains(
            RegisterMap.Problems([new RegisterField(Holding, 0, RegisterType.U16, WordOrder.HighFirst, Load with { Unit = FieldUnit.Degree })]),
            p => p.Contains("cannot be in the unit degree"));
        Assert.Throws<ArgumentException>(() => new RegisterMap([]));
        Assert.Throws<ArgumentException>(() => new RegisterImage(new RegisterMap([Field(Holding, 0, RegisterType.U16, 0)])).Store(0, new byte[4]));
    }

    static RegisterField Field(ModbusFunction function, int address, RegisterType type, int cell) =>
        new(function, (ushort)address, type, WordOrder.HighFirst, Load with { Cell = cell });

    static FieldRule Rule(FieldMeaning meaning, FieldUnit unit, double scale) => new() { Meaning = meaning, Unit = unit, Scale = scale };
}
