using System.Globalization;
using System.Text.Json;
using CsCheck;
using ScaleLink.Protocol.Framing;
using Shared;

namespace ScaleLink.Protocol.Tests.Framing;

public class Crc16Tests
{
    static readonly byte[] CheckInput = "123456789"u8.ToArray();

    // Source: catalogue of parametrised CRC algorithms (reveng.sourceforge.io), in tests/reference/crc-check-values.json.
    [Theory]
    [InlineData("CRC-16/IBM-3740")]
    [InlineData("CRC-16/MODBUS")]
    public void Gives_the_catalogue_s_check_value(string name)
    {
        using var catalogue = JsonDocument.Parse(RepositoryRoot.Read("tests", "reference", "crc-check-values.json"));
        var entry = catalogue.RootElement.GetProperty("algorithms").EnumerateArray()
            .Single(algorithm => algorithm.GetProperty("name").GetString() == name);
        var check = ushort.Parse(entry.GetProperty("check").GetString()![2..], NumberStyles.HexNumber);

        Assert.Equal(check, Crc(name)(CheckInput));
    }

    // The definition itself, bit by bit, with the catalogue's parameters; the tables are only a shortcut to it.
    [Fact]
    public void Tables_agree_with_the_bit_by_bit_definition() =>
        Seeded.Check(Gen.Byte.Array[0, 300], 500, data =>
        {
            Assert.Equal(BitByBit(data, reflected: false), Crc16.Ibm3740(data));
            Assert.Equal(BitByBit(data, reflected: true), Crc16.Modbus(data));
        });

    [Fact]
    public void Of_nothing_is_the_starting_value()
    {
        Assert.Equal(0xFFFF, Crc16.Ibm3740([]));
        Assert.Equal(0xFFFF, Crc16.Modbus([]));
    }

    delegate ushort Function(ReadOnlySpan<byte> data);

    static Function Crc(string name) => name == "CRC-16/MODBUS" ? Crc16.Modbus : Crc16.Ibm3740;

    static ushort BitByBit(byte[] data, bool reflected)
    {
        var polynomial = reflected ? 0x8005 : 0x1021;
        var register = 0xFFFF;
        foreach (var value in data)
            for (var bit = 0; bit < 8; bit++)
            {
                var incoming = value >> (reflected ? bit : 7 - bit) & 1;
                var feedback = (register >> 15 & 1) ^ incoming;
                register = register << 1 & 0xFFFF ^ (feedback * polynomial);
            }
        return (ushort)(reflected ? Enumerable.Range(0, 16).Sum(bit => (register >> bit & 1) << (15 - bit)) : register);
    }
}
