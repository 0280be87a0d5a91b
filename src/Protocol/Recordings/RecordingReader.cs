using System.Globalization;

namespace ScaleLink.Protocol.Recordings;

/// <summary>Reads the text form of a link recording, line by line.</summary>
sealed class RecordingReader
{
    const decimal NanosecondsPerSecond = 1_000_000_000m;
    const decimal LongestSeconds = 1_000_000_000m;

    readonly List<RecordingEvent> _events = [];
    readonly List<string> _devices = [];
    readonly List<string> _notes = [];
    RecordingHeader _header = new();
    int _line;
    bool _isInBody;

    RecordingReader()
    {
    }

    public static LinkRecording Read(string text)
    {
        var reader = new RecordingReader();
        foreach (var line in text.EnumerateLines())
            reader.Take(line);
        return new LinkRecording(reader._header with { Devices = reader._devices, Notes = reader._notes }, reader._events);
    }

    void Take(ReadOnlySpan<char> line)
    {
        _line++;
        if (_line == 1)
            TakeMark(line);
        else if (line.Length > 0 && line[0] == '#')
            return;
        else if (line.IsWhiteSpace())
            _isInBody = true;
        else if (_isInBody)
            TakeEvent(line.Trim());
        else
            TakeHeader(line);
    }

    void TakeMark(ReadOnlySpan<char> line)
    {
        if (!line.Trim().SequenceEqual($"{LinkRecording.Mark} {LinkRecording.Version}") && !line.Trim().SequenceEqual($"{LinkRecording.EarlierMark} {LinkRecording.Version}"))
            throw Wrong($"A link recording begins with \"{LinkRecording.Mark} {LinkRecording.Version}\".");
    }

    // A key that is not known is from a later hand: it is passed over.
    void TakeHeader(ReadOnlySpan<char> line)
    {
        var colon = line.IndexOf(':');
        if (colon < 0)
            throw Wrong("The lines up to the first empty one read \"key: value\".");
        var (key, value) = (line[..colon].Trim().ToString(), line[(colon + 1)..].Trim().ToString());
        if (key == RecordingWords.Device)
            _devices.Add(value);
        else if (key == RecordingWords.Note)
            _notes.Add(value);
        else
            _header = key switch
            {
                RecordingWords.Bay => _header with { Bay = value },
                RecordingWords.Link => _header with { Link = value },
                RecordingWords.Protocol => _header with { Protocol = value },
                RecordingWords.Line => _header with { Line = value },
                RecordingWords.Started => _header with { Started = Time(value) },
                RecordingWords.StartId or RecordingWords.EarlierStartId => _header with { StartId = value },
                RecordingWords.Software => _header with { Software = value },
                RecordingWords.Reason => _header with { Reason = value },
                _ => _header,
            };
    }

    DateTimeOffset Time(string text) =>
        DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var time)
            ? time
            : throw Wrong($"\"{text}\" is no time such as 2026-05-01T14:03:07Z.");

    void TakeEvent(ReadOnlySpan<char> line)
    {
        var (number, rest) = Cut(line);
        if (!decimal.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds) || seconds > LongestSeconds)
            throw Wrong($"\"{number}\" is no time in seconds.");
        var (word, payload) = Cut(rest);
        if (!RecordingWords.TryKind(word.ToString(), out var kind))
            throw Wrong($"\"{word}\" is no event; the events are {string.Join(", ", RecordingWords.Events)}.");
        var happened = new RecordingEvent((long)(seconds * NanosecondsPerSecond), kind, default);
        if (_events.Count > 0 && happened.AtNs < _events[^1].AtNs)
            throw Wrong("Its time is before that of the line above it.");
        _events.Add(happened.HasBytes ? happened with { Bytes = Bytes(payload) } : happened with { Text = payload.ToString() });
    }

    byte[] Bytes(ReadOnlySpan<char> text)
    {
        var bytes = new List<byte>();
        while (!text.IsEmpty)
        {
            var (pair, rest) = Cut(text);
            if (pair.Length != 2 || !byte.TryParse(pair, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value))
                throw Wrong($"\"{pair}\" is no byte of two hexadecimal digits.");
            bytes.Add(value);
            text = rest;
        }

        return bytes.Count > 0 ? [.. bytes] : throw Wrong("There are no bytes in it.");
    }

    FormatException Wrong(string what) => new($"line {_line}: {what}");

    static Halves Cut(ReadOnlySpan<char> text)
    {
        var blank = text.IndexOf(' ');
        return blank < 0 ? new Halves(text, default) : new Halves(text[..blank], text[(blank + 1)..].TrimStart(' '));
    }

    readonly ref struct Halves(ReadOnlySpan<char> first, ReadOnlySpan<char> rest)
    {
        readonly ReadOnlySpan<char> _first = first;
        readonly ReadOnlySpan<char> _rest = rest;

        public void Deconstruct(out ReadOnlySpan<char> first, out ReadOnlySpan<char> rest)
        {
            first = _first;
            rest = _rest;
        }
    }
}
