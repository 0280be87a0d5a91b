using System.Buffers;
using System.Text;
using ScaleLink.Protocol.Readings;

namespace ScaleLink.Protocol.TextLines;

/// <summary>
/// Cuts a stream of bytes into lines and reads them. It keeps no input: what it has not consumed must come again at the head of the
/// next input. What comes before the first end of a line is never read: "12.5" may be the rest of "112.5". Start and end of text (STX and ETX) at either
/// end of a line belong to its wrapping, as blanks do; anywhere else they are no text. One stream, one thread.
/// </summary>
sealed class TextLineDecoder
{
    /// <summary>The longest line, bytes without the end; what is longer is no line.</summary>
    public const int LongestLine = 256;

    /// <summary>What may stand at either end of a line and is not read: blanks, and STX and ETX, between which many indicators put a line.</summary>
    public static ReadOnlySpan<byte> Wrapping => " \t\r\n\x02\x03"u8;

    const int LongestShown = 60;

    readonly LinePattern _pattern;
    readonly LineEnd _end;
    readonly byte[] _line = new byte[LongestLine + 1];
    bool _isInside, _isDropping;
    long _bytes, _lines, _refused, _skipped;

    /// <summary>Reads lines that fit a pattern.</summary>
    public TextLineDecoder(LinePattern pattern, LineEnd end) => (_pattern, _end) = (pattern, end);

    /// <summary>What the decoder has seen since it was made.</summary>
    public TextCounters Counters => new(_bytes, _lines, _refused, _skipped);

    /// <summary>The newest refused line, cut and cleaned for people; empty while there is none.</summary>
    public string LastRefused { get; private set; } = "";

    /// <summary>Looks for the next line that gives a reading.</summary>
    /// <param name="input">What has arrived and was not yet consumed.</param>
    /// <param name="consumed">Up to here nothing is needed again.</param>
    /// <param name="examined">Up to here everything was looked at; the end of the input when more is needed.</param>
    /// <param name="reading">What the line says.</param>
    /// <returns>Whether there is one. When true, ask again with the rest: there may be more.</returns>
    public bool TryRead(
        in ReadOnlySequence<byte> input, out SequencePosition consumed, out SequencePosition examined, out PadReading reading)
    {
        var rest = input;
        while (!rest.IsEmpty)
        {
            var window = Flatten(rest);
            var end = _end.IndexIn(window);
            if (end < 0 && window.Length <= LongestLine)
                break;
            var length = end < 0 ? window.Length : end + 1;
            rest = rest.Slice(length);
            _bytes += length;
            if (end < 0)
                Overflow(length);
            else if (TryAccept(window[..end], length, out reading))
            {
                consumed = examined = rest.Start;
                return true;
            }
        }
        consumed = rest.Start;
        examined = input.End;
        reading = default;
        return false;
    }

    /// <summary>The stream has paused: what is there is a line, end or no end.</summary>
    /// <returns>Whether it gave a reading. All of the input is consumed.</returns>
    public bool TryFinish(in ReadOnlySequence<byte> input, out PadReading reading)
    {
        reading = default;
        if (input.IsEmpty)
        {
            _isInside = true;
            return false;
        }
        var window = Flatten(input);
        _bytes += window.Length;
        return TryAccept(window, window.Length, out reading);
    }

    bool TryAccept(ReadOnlySpan<byte> line, int length, out PadReading reading)
    {
        reading = default;
        var (isFirst, isRest) = (!_isInside, _isDropping);
        (_isInside, _isDropping) = (true, false);
        if (isFirst || isRest)
        {
            _skipped += length;
            return false;
        }
        line = line.Trim(Wrapping);
        if (line.IsEmpty)
            return false;
        if (!line.ContainsAnyExceptInRange((byte)' ', (byte)'~') && _pattern.TryRead(Encoding.ASCII.GetString(line), out reading))
        {
            _lines++;
            return true;
        }
        Refuse(line, length);
        return false;
    }

    void Overflow(int length)
    {
        if (_isDropping || !_isInside)
            _skipped += length;
        else
            Refuse(_line.AsSpan(0, LongestShown), length);
        (_isInside, _isDropping) = (true, true);
    }

    void Refuse(ReadOnlySpan<byte> line, int length)
    {
        _refused++;
        _skipped += length;
        Span<char> shown = stackalloc char[Math.Min(line.Length, LongestShown)];
        for (var index = 0; index < shown.Length; index++)
            shown[index] = line[index] is >= (byte)' ' and <= (byte)'~' ? (char)line[index] : '.';
        LastRefused = new string(shown);
    }

    /// <summary>As much of the sequence as the longest line and one byte more, in one piece.</summary>
    ReadOnlySpan<byte> Flatten(scoped in ReadOnlySequence<byte> sequence)
    {
        var head = sequence.Length > _line.Length ? sequence.Slice(0, _line.Length) : sequence;
        head.CopyTo(_line);
        return _line.AsSpan(0, (int)head.Length);
    }
}
