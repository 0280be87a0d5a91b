using System.Text;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Toml;
using ScaleLink.Protocol.Modbus;

namespace Probing.Tests.Recognition;

/// <summary>What is made of what was heard. The lines are invented, in the ways in which indicators print (common practice, no published source).</summary>
public class RecognitionTests
{
    private static readonly string[] Loads = ["load 1.5 kg", "load 22.5 kg", "load 3.25 kg", "load 4.0 kg"];

    [Theory]
    [InlineData("load 262.418 kg pitch 0.120 roll -0.034 temp 21.50", @"load *(?<load>[-+]? *\d+(?:[.,]\d+)?) *kg *pitch *(?<pitch>[-+]? *\d+(?:[.,]\d+)?) *roll *(?<roll>[-+]? *\d+(?:[.,]\d+)?) *temp *(?<temperature>[-+]? *\d+(?:[.,]\d+)?)", "kg")]
    [InlineData("   123.45 lb", @"(?<load>[-+]? *\d+(?:[.,]\d+)?) *lb", "lb")]
    [InlineData("NET: -  12.5", @"NET: *(?<load>[-+]? *\d+(?:[.,]\d+)?)", null)]
    [InlineData("7;83021", @"[-+]? *\d+(?:[.,]\d+)?;(?<load>[-+]? *\d+(?:[.,]\d+)?)", null)]
    [InlineData("+00123,4g", @"(?<load>[-+]? *\d+(?:[.,]\d+)?)g", "g")]
    [InlineData("pitch 1.0 load 5 kg", @"pitch *[-+]? *\d+(?:[.,]\d+)? *load *(?<load>[-+]? *\d+(?:[.,]\d+)?) *kg", "kg")]
    public void A_pattern_is_found_for_a_line(string line, string pattern, string? unit)
    {
        var guess = TextRecognition.Of(Heard(line, line, line, line, line))!;
        Assert.Equal("text-lines", guess.Protocol);
        Assert.Contains($"pattern = '{pattern}'", Block(guess));
        Assert.Equal(unit is null ? [] : [$"unit = \"{unit}\""], Block(guess).Where(k => k.StartsWith("unit", StringComparison.Ordinal)));
    }

    [Fact]
    public void Words_that_change_from_line_to_line_are_all_taken()
    {
        var guess = TextRecognition.Of(Heard("ST,GS,+012.50kg", "US,GS,+012.75kg", "ST,GS,-000.25kg", "US,NT, 112.75kg"))!;
        Assert.Contains(Block(guess), k => k.Contains("(?:ST,GS,|US,GS,|US,NT, *)(?<load>", StringComparison.Ordinal));
        Assert.Contains("fits 4 of", guess.Summary);
    }

    [Fact]
    public void A_checksum_that_is_right_is_used_and_another_one_is_passed_over()
    {
        string[] lines = [.. Loads.Select(l => $"{l}*{l.Aggregate(0, (sum, letter) => sum ^ letter):X2}")];
        Assert.Contains("checksum = \"xor\"", Block(TextRecognition.Of(Heard(lines))!));
        var other = TextRecognition.Of(Heard([.. lines.Select(l => l[..^2] + "7A")]))!;
        Assert.DoesNotContain(Block(other), k => k.StartsWith("checksum", StringComparison.Ordinal));
        Assert.Contains(other.Remarks, r => r.Contains("no checksum", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("ready")]
    [InlineData("boot 1\r\nreading 2 of 3\r\nOK")]
    public void Text_without_a_common_shape_is_no_source(string line) => Assert.Null(TextRecognition.Of(Heard(line, line))?.Protocol);

    [Fact]
    public void Foreign_traffic_shows_slaves_and_registers_and_warns_of_the_other_master()
    {
        var heard = new List<byte> { 0x00, 0xFF };
        for (byte slave = 3; slave <= 4; slave++)
            heard.AddRange(Exchange(slave));
        var guess = TrafficRecognition.Of([.. heard])!;
        Assert.Contains("slaves 3, 4", guess.Summary);
        Assert.Contains("slave = 3", Block(guess));
        Assert.Contains(guess.Remarks, r => r.Contains("two masters", StringComparison.Ordinal));
        Assert.Contains("table = \"input\"", Block(guess));
    }

    [Fact]
    public void Noise_is_nothing()
    {
        var noise = new byte[200_000];
        new Random(7).NextBytes(noise);
        Assert.Null(PadFrameRecognition.Of(noise));
        Assert.Null(TrafficRecognition.Of(noise));
        Assert.Null(TextRecognition.Of(noise));
    }

    [Fact]
    public void What_is_shown_holds_no_control_characters()
    {
        Assert.Equal("<STX>12.5<CR><LF>", VisibleText.Of("\u000212.5\r\n"u8));
        Assert.Equal("<ESC>[2J<9B>", VisibleText.Of([0x1B, (byte)'[', (byte)'2', (byte)'J', 0x9B]));
        Assert.Equal(["a<LF>", "b"], VisibleText.Lines("a\nb"u8.ToArray(), isText: true, 5));
        Assert.Equal(["00 ff"], VisibleText.Lines([0, 255], isText: false, 5));
    }

    private static string[] Block(Found found) => BayBlock.Of(new PortFinding { Port = "/dev/ttyUSB0", Link = "/dev/ttyUSB0" }, found, "LF")!.Split('\n');

    private static byte[] Heard(params string[] lines) => Encoding.ASCII.GetBytes("torn\r\n" + string.Join("\r\n", lines) + "\r\nto");

    private static IEnumerable<byte> Exchange(byte slave)
    {
        var question = new ModbusRequest(slave, ModbusFunction.ReadInputRegisters, 0, 2);
        var (asked, reply) = (new byte[ModbusRequest.Length], new byte[ModbusReplyWriter.MaxLength]);
        question.Write(asked);
        var length = ModbusReplyWriter.WriteRegisters(slave, question.Function, [1, 2], reply);
        return [.. asked, .. reply[..length]];
    }
}
