using System.Globalization;
using System.Text;

namespace ScaleLink.Protocol.Recordings;

/// <summary>Writes the text form of a link recording.</summary>
static class RecordingWriter
{
    const decimal NanosecondsPerSecond = 1_000_000_000m;

    public static string Write(LinkRecording recording)
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"{LinkRecording.Mark} {LinkRecording.Version}\n");
        WriteHeader(recording.Header, text);
        text.Append('\n');
        foreach (var happened in recording.Events)
            Write(happened, text);
        return text.ToString();
    }

    static void WriteHeader(RecordingHeader header, StringBuilder text)
    {
        Line(RecordingWords.Bay, header.Bay);
        Line(RecordingWords.Link, header.Link);
        Line(RecordingWords.Protocol, header.Protocol);
        Line(RecordingWords.Line, header.Line);
        foreach (var device in header.Devices)
            Line(RecordingWords.Device, device);
        Line(RecordingWords.Started, header.Started?.UtcDateTime.ToString(RecordingWords.TimeFormat, CultureInfo.InvariantCulture) ?? "");
        Line(RecordingWords.StartId, header.StartId);
        Line(RecordingWords.Software, header.Software);
        Line(RecordingWords.Reason, header.Reason);
        foreach (var note in header.Notes)
            Line(RecordingWords.Note, note);

        void Line(string key, string value)
        {
            if (value.Length > 0)
                text.Append(key).Append(": ").Append(Printable(value)).Append('\n');
        }
    }

    static void Write(RecordingEvent happened, StringBuilder text)
    {
        text.Append(CultureInfo.InvariantCulture, $"{happened.AtNs / NanosecondsPerSecond:0.000000} {RecordingWords.Of(happened.Kind)}");
        if (happened.HasBytes)
            foreach (var value in happened.Bytes.Span)
                text.Append(' ').Append(Digit(value >> 4)).Append(Digit(value & 15));
        else if (happened.Text.Length > 0)
            text.Append(' ').Append(Printable(happened.Text));
        text.Append('\n');
    }

    static char Digit(int value) => (char)(value < 10 ? '0' + value : 'a' + value - 10);

    // A line of the file stays a line, whatever a device has said.
    static string Printable(string text) => string.Create(text.Length, text, static (to, from) =>
    {
        for (var index = 0; index < to.Length; index++)
            to[index] = char.IsControl(from[index]) || from[index] is '\u2028' or '\u2029' ? ' ' : from[index];
    });
}
