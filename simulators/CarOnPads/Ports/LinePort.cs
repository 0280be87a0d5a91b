using System.Runtime.Versioning;

namespace CarOnPads.Ports;

/// <summary>
/// A pad's cable whose characters arrive as they were sent only where its reader has set the same rate and parity. A pseudo-terminal carries bytes whatever is
/// set; what its reader has set can be asked on Linux, but for the data bits. Time is not modelled: bytes come when they were written.
/// </summary>
[UnsupportedOSPlatform("windows")]
sealed class LinePort(PseudoTerminalPort cable, LineSetting own) : IPadPort
{
    public string Address => cable.Address;

    public bool Plugged => cable.Plugged;

    public bool HasReader => cable.HasReader;

    public long LostBytes => cable.LostBytes;

    // A kernel that checks parity reads a wrong character as zero; one that does not takes it as it came (from memory).
    public void Write(ReadOnlySpan<byte> bytes)
    {
        if (cable.SetByReader is { } reader)
            cable.Write(Uart.Carry(bytes, own, reader, wrong: 0));
        else
            cable.Write(bytes);
    }

    // A device drops what is wrong.
    public int Read(Span<byte> buffer)
    {
        // At a higher rate the same bits are more characters than were sent.
        const int MostTimes = 16;
        var sent = new byte[buffer.Length / MostTimes];
        while (cable.Read(sent) is > 0 and var read)
        {
            var heard = cable.SetByReader is { } reader ? Uart.Carry(sent.AsSpan(0, read), reader, own, wrong: null) : sent[..read];
            heard.AsSpan(0, Math.Min(heard.Length, buffer.Length)).CopyTo(buffer);
            if (heard.Length > 0)
                return Math.Min(heard.Length, buffer.Length);
        }

        return 0;
    }

    public void Unplug() => cable.Unplug();

    public void Replug() => cable.Replug();

    public void Dispose() => cable.Dispose();
}
