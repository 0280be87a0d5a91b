using System.Text;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Toml;
using ScaleLink.Protocol.Modbus;

namespace Probing.Tests.Recognition;

/// <summary>What is made of what was heard. The lines are invented, in the ways in which indicators print (common practice, no published source).</summary>
public class RecognitionTests
{
    [Theory]
    [InlineData("ready")]
    [InlineData("boot 1\r\nreading 2 of 3\r\nOK")]
    public void Text_without_a_common_shape_is_no_source(string line) => Assert.Null(TextRecognition.Of(Heard(line, line))?.Protocol);

    [Fact]
    public void Foreign_traffic_shows_each_slave_and_its_registers_and_warns_of_the_other_master()
    {
        var heard = new List<byte> { 0x00, 0xFF };
        for (byte slave = 3; slave <= 4; slave++)
            heard.AddRange(Exchange(slave));
        var found = TrafficRecognition.Of([.. heard]);
        Assert.Equal([3, 4], found.Select(f => f.First.Slave));
        var block = Block(found[1]);
        Assert.Contains("slave = 4", block);
        Assert.Contains("table = \"input\"", block);
        Assert.Contains(block, line => line.StartsWith("# ", StringComparison.Ordinal) && line.Contains("two masters", StringComparison.Ordinal));
    }

    [Fact]
    public void Noise_is_nothing()
    {
        var noise = new byte[200_000];
        new Random(7).NextBytes(noise);
        Assert.Null(PadFrameRecognition.Of(noise));
        Assert.Empty(TrafficRecognition.Of(noise));
        Assert.Null(TextRecognition.Of(noise));
    }

    [Fact]
    public void What_is_shown_holds_no_control_characters()
    {
        Assert.Equal("<STX>12.5<CR><LF>", VisibleText.Of("\u000212.5\r\n"u8));
        Assert.Equal("<ESC>[2J<9B>", VisibleText.Of([0x1B, (byte)'[', (byte)'2', (byte)'J', 0x9B]));
        Assert.Equal(["a<LF>", "b"], VisibleText.Lines("a\nb"u8.ToArray(), isText: true, 5));
        Assert.Equal(["a<CR>", "b<CR>"], VisibleText.Lines("a\rb\r"u8.ToArray(), isText: true, 5));
        Assert.Equal(["<STX>a<ETX>", "<STX>b"], VisibleText.Lines("\u0002a\u0003\u0002b"u8.ToArray(), isText: true, 5));
        Assert.Equal(["00 ff"], VisibleText.Lines([0, 255], isText: false, 5));
    }

    internal static string[] Block(Found found) => BayBlock.Of(new PortFinding { Port = "/dev/ttyUSB0", Link = "/dev/ttyUSB0" }, found, "LF")!.Split('\n');

    internal static byte[] Heard(params string[] lines) => Encoding.ASCII.GetBytes("torn\r\n" + string.Join("\r\n", lines) + "\r\nto");

    private static IEnumerable<byte> Exchange(byte slave)
    {
        var question = new ModbusRequest(slave, ModbusFunction.ReadInputRegisters, 0, 2);
        var (asked, reply) = (new byte[ModbusRequest.Length], new byte[ModbusReplyWriter.MaxLength]);
        question.Write(asked);
        var length = ModbusReplyWriter.WriteRegisters(slave, question.Function, [1, 2], reply);
        return [.. asked, .. reply[..length]];
    }
}
