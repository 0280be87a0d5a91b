using System.Buffers;
using System.Text;
using Daemon.Tests.Links;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Measure;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace Daemon.Tests.Bay;

public class TextLineProtocolTests
{
    private const long Ms = 1_000_000;
    private readonly HeardSource _heard = new();

    [Fact]
    public void Lines_become_samples_of_a_pad_that_the_bay_file_names()
    {
        var protocol = Protocol(@"(?<load>\d+\.\d) kg\*(?<check>..)", LineChecksum.Xor);
        Say(protocol, "\n" + Checked("12.5 kg") + Checked("13.5 kg") + Checked("13.5 kg"));
        Assert.Equal([125_000, 135_000], _heard.Samples.Select(s => s.Counts[0]));
        Assert.All(_heard.Samples, s => Assert.Null(s.DeviceMicroseconds));
        Assert.Equal(new PadIdentity("SLP-1", "", 0, 1, 0, 600), Assert.Single(_heard.Identities));
    }

    [Fact]
    public void A_pattern_that_does_not_fit_is_told_with_the_line()
    {
        var protocol = Protocol(@"(?<load>\d+)");
        Say(protocol, "\n12.5 kg\n12.5 kg\n12.5 kg\n");
        Assert.Contains("\"12.5 kg\"", _heard.Troubles["SL-221"]);
        Assert.Empty(_heard.Samples);
    }

    // Without a checksum a garbled neighbour is the only sign that a digit may be wrong.
    [Fact]
    public void A_source_that_garbles_is_not_believed_until_it_has_been_good_for_a_while()
    {
        var protocol = Protocol(@"(?<load>\d+)");
        Say(protocol, "\n" + string.Concat(Enumerable.Repeat("500\n", 30)));
        Assert.Equal(29, _heard.Samples.Count);
        Say(protocol, "5\u00B00\n500\n5x0\n900\n 5 0 0 ?\n500\n");
        Assert.Contains("SL-221", _heard.Troubles.Keys);
        var before = _heard.Samples.Count;
        Say(protocol, string.Concat(Enumerable.Repeat("500\n", 18)));
        Assert.Equal(before, _heard.Samples.Count);
        Say(protocol, string.Concat(Enumerable.Repeat("500\n", 10)));
        Assert.Empty(_heard.Troubles);
        Assert.True(_heard.Samples.Count > before);
        Assert.All(_heard.Samples, s => Assert.Equal(500, s.Counts[0]));
    }

    [Fact]
    public void A_pause_ends_a_line_without_an_end()
    {
        var text = new TextConfiguration(Pattern(@"(?<load>\d+)", LineChecksum.None), LineEnd.PauseOnly, TimeSpan.FromMilliseconds(20));
        var conversation = new ListeningConversation(new TextLineProtocol(Pad(null), Source(text)), _heard);
        conversation.Opened(0);
        for (var k = 0; k < 5; k++)
        {
            var at = (100 + 100 * k) * Ms;
            conversation.Received("50"u8, at);
            Assert.Equal(at + 20 * Ms, conversation.Next(at).AgainNs);
            conversation.Received("0"u8, at + 10 * Ms);
            Assert.Equal(Turn.Never, conversation.Next(at + 30 * Ms).AgainNs);
        }

        // The first may have been the end of a longer one.
        Assert.Equal([(210 * Ms, 500), (310 * Ms, 500), (410 * Ms, 500), (510 * Ms, 500)], _heard.Samples.Select(s => (s.ArrivalNs, s.Counts[0])));
    }

    private void Say(TextLineProtocol protocol, string text) => protocol.Decode(new ReadOnlySequence<byte>(Encoding.Latin1.GetBytes(text)), 0, _heard);

    private static string Checked(string text) => $"{text}*{text.Aggregate(0, (sum, letter) => sum ^ letter):X2}\n";

    private static TextLineProtocol Protocol(string pattern, LineChecksum checksum = LineChecksum.None) =>
        new(Pad(1), Source(new TextConfiguration(Pattern(pattern, checksum), LineEnd.ReturnOrFeed, null)));

    private static LinePattern Pattern(string pattern, LineChecksum checksum)
    {
        var unit = checksum == LineChecksum.None ? FieldUnit.Count : FieldUnit.Kilogram;
        Assert.True(LinePattern.TryCreate(pattern, unit, 1, checksum, out var made, out var problem), problem);
        return made;
    }

    private static SourceConfiguration Source(TextConfiguration text) => new() { Link = "/dev/line", Baud = 9600, Protocol = ProtocolKind.TextLines, Text = text };

    private static PadConfiguration Pad(double? kgPerCount) => new()
    {
        Corner = Corner.LF,
        Source = Source(new TextConfiguration(Pattern(@"(?<load>\d+)", LineChecksum.None), LineEnd.ReturnOrFeed, null)),
        SerialNumber = "SLP-1",
        CapacityKg = 600,
        KgPerCount = kgPerCount,
        SpanUncertaintyPercent = 1,
        CorrectTilt = true,
    };
}
