namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>
/// Follows the fixed headers of MQTT packets in a stream, however it is cut: one byte of type and flags, then the length of the rest in one to four bytes
/// of seven bits, least significant first (MQTT 3.1.1, sections 2.2 and 2.2.3; MQTT 5.0, sections 2.1.1 and 2.1.4).
/// </summary>
internal sealed class PacketHeaders
{
    private const int MostLengthBytes = 4;
    private const byte GoesOn = 0x80;
    private const byte Digits = 0x7F;

    private long _bodyLeft;
    private int _length;
    private int _lengthBytes;
    private bool _isInLength;

    /// <summary>False once a packet promises more than so many bytes with its header, or a length that no packet can have.</summary>
    public bool Follow(ReadOnlySpan<byte> bytes, int most)
    {
        while (!bytes.IsEmpty)
        {
            if (_bodyLeft > 0)
            {
                var skipped = (int)Math.Min(_bodyLeft, bytes.Length);
                _bodyLeft -= skipped;
                bytes = bytes[skipped..];
            }
            else if (!_isInLength)
            {
                (_isInLength, _length, _lengthBytes) = (true, 0, 0);
                bytes = bytes[1..];
            }
            else if (TakesLength(bytes[0], most))
            {
                bytes = bytes[1..];
            }
            else
            {
                return false;
            }
        }

        return true;
    }

    private bool TakesLength(byte next, int most)
    {
        _length |= (next & Digits) << (7 * _lengthBytes);
        _lengthBytes++;
        if ((next & GoesOn) != 0)
            return _lengthBytes < MostLengthBytes;
        (_isInLength, _bodyLeft) = (false, _length);
        return 1 + _lengthBytes + _bodyLeft <= most;
    }
}
