using ScaleLink.Protocol.Framing;
using ScaleLink.Protocol.Modbus;

namespace CarOnPads.Bus;

/// <summary>The RS-485 line that slaves share: finds the host's questions in its bytes and lets the slave that is meant answer.</summary>
sealed class RtuBus(IReadOnlyList<RtuSlave> slaves)
{
    const int QuestionLength = ModbusRequest.Length;
    readonly List<byte> _heard = [];
    readonly List<byte> _echo = [];

    /// <summary>The host's adapter hears what it sends.</summary>
    public bool Echoes { get; set; }

    /// <summary>Bytes from the host.</summary>
    public void Receive(ReadOnlySpan<byte> bytes, double now)
    {
        _heard.AddRange(bytes);
        if (Echoes)
            _echo.AddRange(bytes);
        while (_heard.Count >= QuestionLength)
        {
            var frame = _heard.GetRange(0, QuestionLength).ToArray();
            var isQuestion = (frame[6] | frame[7] << 8) == Crc16.Modbus(frame.AsSpan(0, 6));
            if (isQuestion)
                foreach (var slave in slaves)
                    if (slave.Address == frame[0])
                        slave.Ask(frame, now);
            _heard.RemoveRange(0, isQuestion ? QuestionLength : 1);
        }
    }

    /// <summary>Hands on what is due.</summary>
    public void Release(double now, Action<ReadOnlySpan<byte>> host)
    {
        if (_echo.Count > 0)
            host(_echo.ToArray());
        _echo.Clear();
        foreach (var slave in slaves)
            slave.Release(now, host);
    }
}
