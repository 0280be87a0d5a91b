namespace ScaleLink.Protocol.Recordings;

/// <summary>What one link has carried for a while, and what happened to it. Its text form is described in docs/recordings.md.</summary>
/// <param name="Header">Where, what, when, why.</param>
/// <param name="Events">In the order in which they happened.</param>
sealed record LinkRecording(RecordingHeader Header, IReadOnlyList<RecordingEvent> Events)
{
    /// <summary>First word of the text form.</summary>
    public const string Mark = "scalelink-recording";

    /// <summary>Version of the text form.</summary>
    public const int Version = 1;

    /// <summary>Usual end of a link recording's file name.</summary>
    public const string Extension = ".recording";

    /// <summary>The end that link recordings had before; they are still found by it.</summary>
    public const string EarlierExtension = ".capture";

    /// <summary>First word of the text form before; it is still read.</summary>
    internal const string EarlierMark = "scalelink-capture";

    /// <summary>Reads the text form.</summary>
    /// <exception cref="FormatException">It is none; the message names the line and what is wrong with it.</exception>
    public static LinkRecording Parse(string text) => RecordingReader.Read(text);

    /// <summary>The text form.</summary>
    public string ToText() => RecordingWriter.Write(this);
}
