using System.Text;

namespace CarOnPads.Control;

/// <summary>Lines from a stream, none longer than allowed.</summary>
sealed class LineReader(Stream stream, int longest)
{
    readonly byte[] _buffer = new byte[longest];
    int _filled;

    /// <summary>The next line without its end; null when the other side has closed.</summary>
    /// <exception cref="InvalidDataException">The line is too long.</exception>
    public async Task<string?> ReadAsync(CancellationToken cancel)
    {
        while (true)
        {
            var end = _buffer.AsSpan(0, _filled).IndexOf((byte)'\n');
            if (end >= 0)
            {
                var line = Encoding.UTF8.GetString(_buffer, 0, end).TrimEnd('\r');
                _filled -= end + 1;
                Array.Copy(_buffer, end + 1, _buffer, 0, _filled);
                return line;
            }

            if (_filled == _buffer.Length)
                throw new InvalidDataException($"A line is longer than {longest} bytes.");
            var read = await stream.ReadAsync(_buffer.AsMemory(_filled), cancel);
            if (read == 0)
                return null;
            _filled += read;
        }
    }
}
