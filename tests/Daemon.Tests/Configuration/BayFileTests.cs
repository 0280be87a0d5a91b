using ScaleLink.Daemon.Configuration;
using ScaleLink.Measure;

namespace Daemon.Tests.Configuration;

public class BayFileTests
{
    private const string Good = """
        bay = "unit6"
        [listen]
        page_port = 0
        [target]
        cross_weight_percent = 50.0
        [[pads]]
        corner = "LF"
        link = "tcp://127.0.0.1:7001"
        serial_number = "SLP-1001"
        kg_per_count = 0.002
        [[pads]]
        corner = "RF"
        link = "tcp://127.0.0.1:7002"
        """;

    [Fact]
    public void A_good_file_gives_its_values_and_the_defaults_for_the_rest()
    {
        var file = BayFile.Parse(Good, "bay.toml");
        Assert.Empty(file.Mistakes);
        var bay = file.Configuration!;
        Assert.Equal("unit6", bay.Bay);
        Assert.Equal([Corner.LF, Corner.RF], bay.Pads.Select(p => p.Corner));
        Assert.Equal(0.002, bay.Pads[0].KgPerCount);
        Assert.Null(bay.Pads[1].KgPerCount);
        Assert.Equal(0, bay.Listen.PagePort);
        Assert.Equal(5481, bay.Listen.GrpcPort);
        Assert.Equal(new TargetConfiguration(50, 0.2), bay.Target);
        Assert.Equal(BrokerKind.Embedded, bay.Mqtt.Broker);
    }

    [Fact]
    public void Every_mistake_is_told_at_once_with_code_line_and_remedy()
    {
        var file = BayFile.Parse("""
            bay = "unit 6"
            [[pads]]
            corner = "LF"
            link = "tcp://127.0.0.1:7001"
            baud = 115201
            [[pads]]
            corner = "LF"
            link = "tcp://127.0.0.1:7001"
            [[pads]]
            corner = "FRONT"
            link = "/dev/no-such-port"
            kg_per_cuont = 0.002
            """, "bay.toml");
        Assert.Equal(
            ["1 SL-007", "4 SL-013", "8 SL-009", "8 SL-010", "10 SL-006", "11 SL-101", "12 SL-005"],
            file.Mistakes.Select(m => $"{m.Line ?? 0} {m.Code}").Order(Comparer<string>.Create((a, b) => (int.Parse(a.Split(' ')[0]), a).CompareTo((int.Parse(b.Split(' ')[0]), b)))));
        Assert.All(file.Mistakes, m => Assert.NotEmpty(m.Remedy.ToString()));
    }

    [Theory]
    [InlineData("bay = \"unit6\"\nbay = \"unit7\"", "SL-002")]
    [InlineData("bay = ", "SL-002")]
    [InlineData("[pads]\ncorner = \"LF\"", "SL-003")]
    [InlineData("[colours]\nx = 1", "SL-005")]
    [InlineData("bay = 6", "SL-006")]
    [InlineData("", "SL-004")]
    [InlineData("", "SL-008")]
    [InlineData("[listen]\naddress = \"0.0.0.0\"", "SL-015")]
    [InlineData("[listen]\naddress = \"bay\"\nother_machines = true", "SL-015")]
    [InlineData("[listen]\nnames = \"http://bay\"", "SL-021")]
    [InlineData("[listen]\npage_port = 5480\ngrpc_port = 5480", "SL-014")]
    [InlineData("[listen]\npage_port = 5480\n[mqtt]\nbroker = \"embedded\"\nport = 5480", "SL-014")]
    [InlineData("[[pads]]\ncorner = \"LF\"\nlink = \"/dev/null\"", "SL-104")]
    [InlineData("[[pads]]\ncorner = \"LF\"\nlink = \"tcp://nowhere\"", "SL-012")]
    [InlineData("[[pads]]\ncorner = \"LF\"\nlink = \"tcp://h:1\"\nkg_per_count = 0", "SL-006")]
    [InlineData("[mqtt]\nrate_hz = 21", "SL-006")]
    public void A_mistake_has_its_code(string text, string code) =>
        Assert.Contains(BayFile.Parse(text, "bay.toml").Mistakes, m => m.Code == code);

    [Fact]
    public void A_pad_whose_corner_is_wrong_too_is_told_by_its_line()
    {
        var mistakes = BayFile.Parse("bay = \"unit6\"\n[[pads]]\ncorner = \"XX\"\nlink = \"/dev/no-such-port\"", "bay.toml").Mistakes;
        Assert.Contains("the pad of line 4: ", Assert.Single(mistakes, m => m.Code == "SL-101").Message.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(mistakes, m => m.Message.ToString().Contains("-1", StringComparison.Ordinal));
    }

    [Fact]
    public void Other_machines_are_let_in_only_by_an_explicit_word()
    {
        const string network = "[listen]\naddress = \"0.0.0.0\"\nother_machines = true\nnames = \"bay, bay.example\"";
        var file = BayFile.Parse(network, "bay.toml");
        Assert.DoesNotContain(file.Mistakes, m => m.Code.Text is "SL-015" or "SL-021");
        Assert.Equal(["bay", "bay.example"], file.Configuration!.Listen.Names);
        Assert.False(BayFile.Parse("", "bay.toml").Configuration!.Listen.OtherMachines);
    }

    [Fact]
    public void Two_pads_may_not_claim_one_serial_number() =>
        Assert.Contains(BayFile.Parse(Good + "\nserial_number = \"SLP-1001\"", "bay.toml").Mistakes, m => m.Code == "SL-011");

    [Fact]
    public void Two_names_of_one_port_are_one_port()
    {
        var folder = Directory.CreateTempSubdirectory();
        File.CreateSymbolicLink(Path.Combine(folder.FullName, "a"), "/dev/null");
        File.CreateSymbolicLink(Path.Combine(folder.FullName, "b"), "/dev/null");
        var file = BayFile.Parse($"""
            bay = "unit6"
            [[pads]]
            corner = "LF"
            link = "{folder}/a"
            [[pads]]
            corner = "RF"
            link = "{folder}/b"
            """, "bay.toml");
        Assert.Contains(file.Mistakes, m => m.Code == "SL-010");
        folder.Delete(recursive: true);
    }

    [Fact]
    public void A_missing_file_is_a_mistake_and_no_crash() =>
        Assert.Equal("SL-001", Assert.Single(BayFile.Load("/no/such/bay.toml").Mistakes).Code);
}
