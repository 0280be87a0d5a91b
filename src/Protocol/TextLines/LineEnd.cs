namespace ScaleLink.Protocol.TextLines;

/// <summary>The bytes that end a line: either of two, which may be the same. Without any, only a pause in the stream ends a line.</summary>
readonly record struct LineEnd
{
    LineEnd(byte? one, byte? other) => (One, Other) = (one, other);

    /// <summary>Carriage return, line feed, or both: an empty line between them counts for nothing.</summary>
    public static LineEnd ReturnOrFeed { get; } = new((byte)'\r', (byte)'\n');

    /// <summary>No byte: a pause.</summary>
    public static LineEnd PauseOnly { get; }

    /// <summary>One of the two bytes; absent when only a pause ends a line.</summary>
    public byte? One { get; }

    /// <summary>The other of the two bytes.</summary>
    public byte? Other { get; }

    /// <summary>That byte and no other.</summary>
    public static LineEnd Only(byte value) => new(value, value);

    internal int IndexIn(ReadOnlySpan<byte> bytes) => One is { } one ? bytes.IndexOfAny(one, Other!.Value) : -1;
}
