using System.Text;
using ScaleLink.Probing.Recognition;
using ScaleLink.Protocol.PadFrames;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace Probing.Tests.Recognition;

/// <summary>What is made of lines. They are invented, in the ways in which indicators print (common practice, no published source).</summary>
public class TextRecognitionTests
{
    private const string Number = @"[-+]? *\d+(?:[.,]\d+)?";
    private static readonly string[] Loads = ["load 1.5 kg", "load 22.5 kg", "load 3.25 kg", "load 4.0 kg"];

    [Theory]
    [InlineData("load 262.418 kg pitch 0.120 roll -0.034 temp 21.50", $@"load *(?<load>{Number}) *kg *pitch *(?<pitch>{Number}) *roll *(?<roll>{Number}) *temp *(?<temperature>{Number})", "kg")]
    [InlineData("   123.45 lb", $@"(?<load>{Number}) *lb", "lb")]
    [InlineData("   123.45 KG", $@"(?<load>{Number}) *KG", "kg")]
    [InlineData("NET: -  12.5", $@"NET: *(?<load>{Number})", null)]
    [InlineData("7;83021", $@"{Number};(?<load>{Number})", null)]
    [InlineData("12.5;20", $@"{Number};(?<load>{Number})", null)]
    [InlineData("+00123,4g", $@"(?<load>{Number})g", "g")]
    [InlineData("+00123,4 G", $@"(?<load>{Number}) *G", null)]
    [InlineData("pitch 1.0 load 5 kg", $@"pitch *{Number} *load *(?<load>{Number}) *kg", "kg")]
    public void A_pattern_is_found_for_a_line(string line, string pattern, string? unit)
    {
        var found = Text(line, line, line, line, line);
        Assert.Equal((pattern, unit), (found.Pattern, found.Unit));
        Assert.Contains($"pattern = '{pattern}'", RecognitionTests.Block(found));
    }

    [Theory]
    [InlineData("ST,GS,+012.50kg", "US,GS,+012.50kg", "OL,GS,+999.99kg", "ST,NT,+012.50kg")]
    [InlineData("S S    12.50 kg", "S D    12.50 kg", "S O   999.00 kg", "S X    12.50 kg")]
    [InlineData("   12.50 kg  ST", "   12.50 kg  US", "  999.00 kg  OL", "   12.50 kg  ??")]
    [InlineData("gross 12.50 kg stable", "gross 12.50 kg motion", "gross 99.9 kg over", "net 12.50 kg stable")]
    public void A_state_is_a_class_although_one_was_heard_and_net_and_gross_stay(string heard, string moving, string over, string other)
    {
        var found = Text(heard, heard, heard, heard);
        Assert.True(LinePattern.TryCreate(found.Pattern, FieldUnit.Kilogram, 1, LineChecksum.None, out var pattern, out var problem), problem);
        Assert.True(pattern.TryRead(heard.Trim(), out var at));
        Assert.True(pattern.TryRead(moving.Trim(), out var rocking));
        Assert.Equal((125_000, PadStatus.None), (rocking[0], at.Status | rocking.Status));
        Assert.True(pattern.TryRead(over.Trim(), out var beyond));
        Assert.Equal(PadStatus.Cell0AtLimit, beyond.Status);
        Assert.False(pattern.TryRead(other.Trim(), out _));
    }

    [Fact]
    public void A_device_that_goes_from_gross_to_net_meanwhile_is_told_of()
    {
        Assert.Contains(Text("GS 12.5", "NT 2.5", "GS 12.5", "GS 12.5").Remarks, r => r.StartsWith("GS and NT were heard in one place", StringComparison.Ordinal));
        Assert.Contains(Text("G 12.5 T 1.5", "G 12.5 T 1.5", "G 12.6 T 1.5").Remarks, r => r.StartsWith("G, T stay as heard", StringComparison.Ordinal));
    }

    [Fact]
    public void Words_that_change_and_are_no_state_are_all_taken()
    {
        var found = Text("A1 +012.50kg", "B1 +012.75kg", "A1 -000.25kg", "B1  112.75kg");
        Assert.Equal(4, found.Fitting);
        Assert.StartsWith("(?:A|B)", found.Pattern, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_numbers_are_asked_about_and_each_has_its_pattern()
    {
        var found = Text("01 G 262.4 kg N 250.1 kg", "01 G 262.5 kg N 250.2 kg", "01 G 262.4 kg N 250.1 kg");
        Assert.True(found.IsToBeAsked);
        Assert.Equal((2, "the word before it says gross, which a tare at the device does not move"), (found.Load, found.Why));
        Assert.Equal([1, 3], found.Others.Keys.Order());
        Assert.Equal("number 3, behind \"kg N\", from 250.1 to 250.2 kg", found.Numbers[2].Describe());
        var net = found.Taking(3)!;
        Assert.EndsWith($"(?<load>{Number}) *kg", net.Pattern, StringComparison.Ordinal);
        Assert.False(net.IsToBeAsked);
        Assert.Null(found.Taking(4));
        var block = RecognitionTests.Block(found);
        Assert.Contains(block, line => line.StartsWith("# A line has several numbers", StringComparison.Ordinal));
        Assert.Contains($"# with number 3 for the load: pattern = '{net.Pattern}'", block);
        Assert.Equal(1, block.Count(line => line.StartsWith("pattern", StringComparison.Ordinal)));
    }

    [Fact]
    public void Several_numbers_may_be_the_cells_of_one_pad()
    {
        var found = Text("10;20;30;7", "11;21;32;7", "10;23;31;7");
        var cells = found.TakingAll()!;
        Assert.Equal($"(?<load1>{Number});(?<load2>{Number});(?<load3>{Number});{Number}", cells.Pattern);
        Assert.Contains($"# if they are the cells of one pad: pattern = '{cells.Pattern}'", RecognitionTests.Block(found));
        Assert.Equal($"(?<load1>{Number});{Number};{Number};(?<load2>{Number})", found.Taking([1, 4])!.Pattern);
        Assert.Null(found.Taking([]));
        // A pad cannot have one cell in kg and another in counts.
        Assert.Null(Text("1 kg 2", "2 kg 3", "1 kg 3").Taking([1, 2]));
    }

    [Fact]
    public void A_clock_is_no_load_and_of_equals_the_larger_one_is_taken_and_said_so()
    {
        Assert.False(Text([.. Enumerable.Range(100, 6).Select(k => $"{k} 12.5")]).IsToBeAsked);
        var equals = Text("7;83021", "7;83021", "7;83021");
        Assert.Equal((2, "it is the largest, and nothing else tells them apart"), (equals.Load, equals.Why));
    }

    [Fact]
    public void Nothing_is_made_up_about_sensitivity()
    {
        var block = RecognitionTests.Block(Text("83021", "83022", "83021"));
        Assert.DoesNotContain(block, line => line.Contains("kg_per_count", StringComparison.Ordinal));
        Assert.Contains(block, line => line.StartsWith('#') && line.Contains("first calibration procedure", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("", "\r", null)]
    [InlineData("\x2", "\r", null)]
    [InlineData("\x2", "\x3\r\n", null)]
    [InlineData("\x2", "\x3", "line_end = \"\\u0003\"")]
    public void Lines_between_start_and_end_of_text_and_those_with_a_return_alone_are_read(string start, string end, string? key)
    {
        var found = Assert.IsType<FoundText>(TextRecognition.Of(Encoding.ASCII.GetBytes("9 kg" + end + string.Concat(Enumerable.Repeat($"{start} 12.5 kg{end}", 5)) + start)));
        Assert.Equal((5, 5, "kg"), (found.Lines.Count, found.Fitting, found.Unit));
        Assert.Equal(key is null ? [] : [key], RecognitionTests.Block(found).Where(line => line.StartsWith("line_end", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_check_character_behind_the_end_of_text_is_told_of()
    {
        var lines = Enumerable.Range(0, 6).SelectMany(k => Encoding.ASCII.GetBytes($"\x2 12.{k} kg\x3").Append((byte)(0x80 + k)));
        Assert.Contains("check character", Assert.IsType<FoundNothing>(TextRecognition.Of([.. lines])).ToDo[0]);
    }

    [Theory]
    [InlineData("ready")]
    [InlineData("")]
    public void A_single_line_or_none_is_nothing_yet(string heard) => Assert.Null(TextRecognition.Of(Encoding.ASCII.GetBytes(heard)));

    [Fact]
    public void A_checksum_that_is_right_is_used_and_another_one_is_passed_over()
    {
        string[] lines = [.. Loads.Select(l => $"{l}*{l.Aggregate(0, (sum, letter) => sum ^ letter):X2}")];
        Assert.Contains("checksum = \"xor\"", RecognitionTests.Block(Text(lines)));
        var other = Text([.. lines.Select(l => l[..^2] + "7A")]);
        Assert.DoesNotContain(RecognitionTests.Block(other), k => k.StartsWith("checksum", StringComparison.Ordinal));
        Assert.Contains(other.Remarks, r => r.Contains("no checksum", StringComparison.Ordinal));
    }

    private static FoundText Text(params string[] lines) => Assert.IsType<FoundText>(TextRecognition.Of(RecognitionTests.Heard(lines)));
}
