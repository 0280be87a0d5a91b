using System.Text;
using CsCheck;
using ScaleLink.Protocol.Recordings;
using ScaleLink.Protocol.Framing;
using Shared;

namespace ScaleLink.Protocol.Tests.Recordings;

/// <summary>The text form of link recordings. No published source: the form is this project's own, described in docs/recordings.md.</summary>
public class RecordingTests
{
    private static readonly Gen<RecordingEvent> s_event = Gen.Select(
        Gen.Long[0, 1_000_000_000_000], Gen.Enum<RecordingEventKind>(), Gen.Byte.Array[1, 40], Gen.String[Gen.Char[' ', '~'], 0, 20],
        (at, kind, bytes, text) => kind is RecordingEventKind.Received or RecordingEventKind.Sent
            ? new RecordingEvent(at / 1000 * 1000, kind, bytes)
            : new RecordingEvent(at / 1000 * 1000, kind, default, text.Trim()));

    [Fact]
    public void What_is_written_is_read_again() => Seeded.Check(s_event.Array[0, 30], 300, events =>
    {
        var recording = new LinkRecording(Header(), [.. events.OrderBy(e => e.AtNs)]);
        var read = LinkRecording.Parse(recording.ToText());
        Assert.Equivalent(recording.Header, read.Header, strict: true);
        Assert.Equal(Describe(recording), Describe(read));
    });

    [Fact]
    public void The_example_of_the_document_is_read()
    {
        var text = RepositoryRoot.Read("docs", "recordings.md").Split("```")[1].Trim('\n');
        var recording = LinkRecording.Parse(text);
        Assert.Equal("modbus-rtu", recording.Header.Protocol);
        Assert.Equal(new DateTimeOffset(2026, 5, 1, 14, 3, 7, 125, TimeSpan.Zero), recording.Header.Started);
        Assert.Equal(
            [RecordingEventKind.Open, RecordingEventKind.Sent, RecordingEventKind.Received, RecordingEventKind.HangUp, RecordingEventKind.Fault],
            recording.Events.Select(e => e.Kind));
        Assert.Equal(11_873_000, recording.Events[2].AtNs);
        // The frames of the example carry good checks.
        Assert.All(recording.Events.Where(e => e.HasBytes), e => Assert.Equal(0, Crc16.Modbus(e.Bytes.Span)));
    }

    [Theory]
    [InlineData("", "line 1: A link recording begins")]
    [InlineData("something else", "line 1: A link recording begins")]
    [InlineData("scalelink-recording 2", "line 1: A link recording begins")]
    [InlineData("scalelink-recording 1\nbay unit6", "line 2: The lines up to")]
    [InlineData("scalelink-recording 1\nstarted: yesterday", "line 2: \"yesterday\" is no time")]
    [InlineData("scalelink-recording 1\n\nsoon open", "line 3: \"soon\" is no time")]
    [InlineData("scalelink-recording 1\n\n1.5 explode", "line 3: \"explode\" is no event")]
    [InlineData("scalelink-recording 1\n\n2 open\n1 open", "line 4: Its time is before")]
    [InlineData("scalelink-recording 1\n\n1 received 0g", "line 3: \"0g\" is no byte")]
    [InlineData("scalelink-recording 1\n\n1 received 001", "line 3: \"001\" is no byte")]
    [InlineData("scalelink-recording 1\n\n1 received", "line 3: There are no bytes")]
    [InlineData("scalelink-recording 1\n\n-1 open", "line 3: \"-1\" is no time")]
    [InlineData("scalelink-recording 1\n\n99999999999999999999 open", "line 3: ")]
    public void What_is_no_link_recording_is_refused_by_its_line(string text, string said) =>
        Assert.StartsWith(said, Assert.Throws<FormatException>(() => LinkRecording.Parse(text)).Message);

    [Fact]
    public void Remarks_unknown_keys_and_other_line_ends_are_passed_over()
    {
        var recording = LinkRecording.Parse("scalelink-recording 1\r\ncolour: red\r\n# mine\r\n\r\n1 open here\r\n# and mine\r\n2.000001  received  0A ff\r\n");
        Assert.Equal("here", recording.Events[0].Text);
        Assert.Equal(2_000_001_000, recording.Events[1].AtNs);
        Assert.Equal([0x0A, 0xFF], recording.Events[1].Bytes.ToArray());
    }

    [Fact]
    public void What_a_device_has_said_makes_no_lines_of_its_own()
    {
        var header = Header() with { Devices = ["LF\n9 open"] };
        Assert.Equal("LF 9 open", LinkRecording.Parse(new LinkRecording(header, []).ToText()).Header.Devices[0]);
    }

    [Fact]
    public void Random_text_is_refused_or_read_and_nothing_else() => Seeded.Check(Gen.String, 2000, text =>
    {
        try
        {
            LinkRecording.Parse("scalelink-recording 1\n\n" + text);
        }
        catch (FormatException)
        {
            // The only way out.
        }
    });

    private static RecordingHeader Header() => new()
    {
        Bay = "unit6",
        Link = "/dev/ttyUSB0",
        Protocol = "text-lines",
        Line = "9600 none",
        Devices = ["LF slave 1", "RF slave 2"],
        Started = new DateTimeOffset(2026, 5, 1, 14, 3, 7, 125, TimeSpan.Zero),
        StartId = "run",
        Software = "scalelink 0.1.0",
        Reason = "request",
        Notes = ["one", "two: with a colon"],
    };

    private static string Describe(LinkRecording recording)
    {
        var text = new StringBuilder();
        foreach (var e in recording.Events)
            text.AppendLine($"{e.AtNs} {e.Kind} {Convert.ToHexString(e.Bytes.Span)} {e.Text}");
        return text.ToString();
    }
}
