using System.Text.Json;
using ScaleLink.Protocol.Framing;
using ScaleLink.Protocol.Modbus;
using ScaleLink.Protocol.Readings;
using Shared;

namespace ScaleLink.Protocol.Tests.Modbus;

/// <summary>
/// Source: MODBUS over Serial Line V1.02 and MODBUS Application Protocol V1.1b3, frames as collected in public examples, in
/// tests/reference/modbus-rtu-frames.json (verified from secondary copies, every CRC recomputed).
/// </summary>
public class PublishedFramesTests
{
    static JsonElement Reference()
    {
        using var document = JsonDocument.Parse(RepositoryRoot.Read("tests", "reference", "modbus-rtu-frames.json"));
        return document.RootElement.Clone();
    }

    static byte[] Frame(string what) => Hex.Bytes(Reference().GetProperty("frames").GetProperty("list").EnumerateArray()
        .Single(frame => frame.GetProperty("what").GetString()!.StartsWith(what, StringComparison.Ordinal)).GetProperty("frame").GetString()!);

    [Fact]
    public void Every_published_frame_carries_the_check_that_is_computed_here()
    {
        var frames = Reference().GetProperty("frames").GetProperty("list").EnumerateArray().Select(f => Hex.Bytes(f.GetProperty("frame").GetString()!)).ToList();
        Assert.Equal(11, frames.Count);
        Assert.All(frames, frame => Assert.Equal(Crc16.Modbus(frame.AsSpan(..^2)), frame[^2] | frame[^1] << 8));
        var example = Reference().GetProperty("crc_example_spec");
        var crc = Crc16.Modbus(Hex.Bytes(example.GetProperty("bytes").GetString()!));
        Assert.Equal(example.GetProperty("crc_on_wire").GetString(), Hex.Text([(byte)crc, (byte)(crc >> 8)]));
    }

    [Fact]
    public void The_published_requests_are_written_and_read()
    {
        (string What, ModbusRequest Request)[] requests =
        [
            ("read holding registers request", new ModbusRequest(17, ModbusFunction.ReadHoldingRegisters, 0x006B, 3)),
            ("read input registers request", new ModbusRequest(17, ModbusFunction.ReadInputRegisters, 8, 1)),
            ("read 10 holding registers", new ModbusRequest(1, ModbusFunction.ReadHoldingRegisters, 0, 10)),
        ];
        foreach (var (what, request) in requests)
        {
            Assert.Equal(Hex.Text(Frame(what)), Hex.Text(Line.Request(request)));
            Assert.True(ModbusRequest.TryParse(Frame(what), out var read));
            Assert.Equal(request, read);
        }
    }

    [Fact]
    public void The_published_replies_are_read()
    {
        Assert.Equal(
            [new Heard(ModbusReplyKind.Registers, 17, "AE4156524340", 0)],
            Line.Decode(Line.Waiting(), Frame("read holding registers response")));
        Assert.Equal(
            [new Heard(ModbusReplyKind.Registers, 17, "000A", 0)],
            Line.Decode(Line.Waiting(new ModbusRequest(17, ModbusFunction.ReadInputRegisters, 8, 1)), Frame("read input registers response: 000A")));
    }

    // The published refusal answers function 1, which this master never sends: it must not pass for a refusal of a read.
    [Fact]
    public void The_published_refusal_of_another_function_is_no_reply()
    {
        Assert.Equal("0A 81 02 B0 53", Hex.Text(Frame("exception reply")));
        var decoder = Line.Waiting(new ModbusRequest(10, ModbusFunction.ReadHoldingRegisters, 0, 1));
        Assert.Empty(Line.Decode(decoder, Frame("exception reply")));
        Assert.Equal(5, decoder.Counters.SkippedBytes);
    }

    [Fact]
    public void The_published_word_swapped_floats_have_their_value()
    {
        var rule = new FieldRule { Meaning = FieldMeaning.Load, Unit = FieldUnit.Count, Scale = 1000 };
        var map = new RegisterMap([.. Enumerable.Range(0, 4).Select(cell =>
            new RegisterField(ModbusFunction.ReadInputRegisters, (ushort)(2 * cell), RegisterType.F32, WordOrder.LowFirst, rule with { Cell = cell }))]);
        Assert.Equal([new RegisterBlock(ModbusFunction.ReadInputRegisters, 0, 8)], map.Blocks);

        var heard = Assert.Single(Line.Decode(Line.Waiting(new ModbusRequest(1, ModbusFunction.ReadInputRegisters, 0, 8)), Frame("read input registers response, four")));
        var image = new RegisterImage(map);
        image.Store(0, Hex.Bytes(heard.Data));
        // 0x45B75124 = 5866.143, as the source says.
        Assert.Equal(5866143, image.Read()[0], 1.0);
    }
}
