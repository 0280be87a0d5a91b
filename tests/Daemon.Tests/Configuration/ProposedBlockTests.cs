using System.Globalization;
using System.Text;
using CsCheck;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Toml;
using ScaleLink.Protocol.Modbus;
using Shared;

namespace Daemon.Tests.Configuration;

/// <summary>Whatever was heard: what is proposed for it is a bay file that is taken, whole or with the other numbers that it names.</summary>
public class ProposedBlockTests
{
    private static readonly string[] Words = ["ST", "us", "GS", "N", "net:", "W", "kg", "lb", " g", "load=", "temp", "pitch", "roll", "", " ", "  ", ",", ";", "#", "*", "'", "\"", "\\", "(", "[", "$", "{", "|", "?", "+", ".", "%", "\t", "x27"];
    private static readonly string[] Ends = ["\r\n", "\n", "\r", "\x3", "\x3\r\n"];

    private static readonly Gen<byte[]> Lines =
        from words in OneOf(Words).Array[1, 7]
        from end in OneOf(Ends)
        from start in OneOf("", "\x2")
        from values in Gen.Double[-999, 999].Array[words.Length * 12]
        from decimals in Gen.Int[0, 3]
        select Encoding.ASCII.GetBytes("7" + end + string.Concat(Enumerable.Range(0, 12).Select(line => start + string.Concat(words.Select((word, k) => word + values[line * words.Length + k].ToString($"F{decimals}", CultureInfo.InvariantCulture))) + end)));

    [Fact]
    public void Every_line_that_is_recognised_gives_a_block_that_is_taken()
    {
        var taken = 0;
        Seeded.Check(Lines, 120, heard =>
        {
            if (TextRecognition.Of(heard) is not FoundText found)
                return;
            taken++;
            Assert.All(found.Others.Values.Prepend(found).Append(found.TakingAll() ?? found), text => AssertTaken(text));
        });
        Assert.InRange(taken, 60, 120);
    }

    [Fact]
    public void Noise_of_any_kind_is_read_without_harm() => Seeded.Check(Gen.Byte.Array[0, 600], 400, heard =>
    {
        if ((TextRecognition.Of(heard) ?? SevenBitText.Of(heard)?.Text as object) is FoundText found)
            AssertTaken(found);
        Assert.Empty(TrafficRecognition.Of(heard));
        Assert.Null(PadFrameRecognition.Of(heard));
    });

    // Registers of any content, moving or not, in either table.
    [Fact]
    public void Every_slave_gives_a_block_that_is_taken() => Seeded.Check(
        from slave in Gen.Byte[1, 247]
        from isInput in Gen.Bool
        from at in Gen.UShort[0, 5000]
        from registers in Gen.UShort.Array[0, 12]
        from moves in Gen.Bool
        from ms in Gen.Int[1, 3000]
        from baud in OneOf<int?>(null, 1200, 9600, 115200)
        select (Slave: slave, IsInput: isInput, At: at, Registers: registers, Moves: moves, Ms: ms, Baud: baud), 200, c =>
        {
            ushort[][] readings = c.Registers.Length == 0 ? [] : [c.Registers, [.. c.Registers.Select((r, k) => (ushort)(c.Moves && k % 2 == 1 ? r ^ 3 : r))]];
            var table = new FoundRegisters(c.IsInput ? ModbusFunction.ReadInputRegisters : ModbusFunction.ReadHoldingRegisters, c.At, readings, readings.Length == 0 ? ModbusException.IllegalDataAddress : null);
            AssertTaken(new FoundSlave(c.Slave, [table], TimeSpan.FromMilliseconds(c.Ms)), c.Baud);
        });

    private static Gen<T> OneOf<T>(params T[] all) => Gen.Int[0, all.Length - 1].Select(k => all[k]);

    private static void AssertTaken(Found found, int? baud = 9600)
    {
        var finding = new PortFinding { Port = "/dev/ttyUSB0", Link = "/dev/ttyUSB0", Baud = baud, Format = CharacterFormat.Usual, Found = [found] };
        var text = $"bay = \"unit6\"\n{new BayBlocks("LF", isFirstKnown: false).Of(finding)}\n";
        // The port itself is not there.
        var mistakes = BayFile.Parse(text, "/tmp/bay.toml").Mistakes.Where(m => m.Code != LinkCodes.PortMissing).ToList();
        Assert.True(mistakes.Count == 0, $"{string.Join('\n', mistakes)}\n{text}");
    }
}
