using System.Globalization;
using System.Text;

namespace ScaleLink.Protocol.Captures;

/// <summary>Writes the text form of a capture.</summary>
static class CaptureWriter
{
    const decimal NanosecondsPerSecond = 1_000_000_000m;

    public static string Write(Capture capture)
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"{Capture.Mark} {Capture.Version}\n");
        WriteHeader(capture.Header, text);
        text.Append('\n');
        foreach (var happened in capture.Events)
            Write(happened, text);
        return text.ToString();
    }

    static void WriteHeader(CaptureHeader header, StringBuilder text)
    {
        Line(CaptureWords.Bay, header.Bay);
        Line(CaptureWords.Link, header.Link);
        Line(CaptureWords.Protocol, header.Protocol);
        Line(CaptureWords.Line, header.Line);
        foreach (var device in header.Devices)
            Line(CaptureWords.Device, device);
        Line(CaptureWords.Started, header.Started?.UtcDateTime.ToString(CaptureWords.TimeFormat, CultureInfo.InvariantCulture) ?? "");
        Line(CaptureWords.Run, header.Run);
        Line(CaptureWords.Software, header.Software);
        Line(CaptureWords.Reason, header.Reason);
        foreach (var note in header.Notes)
            Line(CaptureWords.Note, note);

        void Line(string key, string value)
        {
            if (value.Length > 0)
                text.Append(key).Append(": ").Append(Printable(value)).Append('\n');
        }
    }

    static void Write(CaptureEvent happened, StringBuilder text)
    {
        text.Append(CultureInfo.InvariantCulture, $"{happened.AtNs / NanosecondsPerSecond:0.000000} {CaptureWords.Of(happened.Kind)}");
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
