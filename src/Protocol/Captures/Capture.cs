namespace ScaleLink.Protocol.Captures;

/// <summary>What one link has carried for a while, and what happened to it. Its text form is described in docs/captures.md.</summary>
/// <param name="Header">Where, what, when, why.</param>
/// <param name="Events">In the order in which they happened.</param>
public sealed record Capture(CaptureHeader Header, IReadOnlyList<CaptureEvent> Events)
{
    /// <summary>First word of the text form.</summary>
    public const string Mark = "scalelink-capture";

    /// <summary>Version of the text form.</summary>
    public const int Version = 1;

    /// <summary>Usual end of a capture's file name.</summary>
    public const string Extension = ".capture";

    /// <summary>Reads the text form.</summary>
    /// <exception cref="FormatException">It is none; the message names the line and what is wrong with it.</exception>
    public static Capture Parse(string text) => CaptureReader.Read(text);

    /// <summary>The text form.</summary>
    public string ToText() => CaptureWriter.Write(this);
}
