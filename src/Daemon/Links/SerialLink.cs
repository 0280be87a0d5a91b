using System.IO.Ports;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links;

/// <summary>A serial port through the library of .NET: on systems other than Linux, and where the bay file asks for it.</summary>
internal sealed class SerialLink : ILink
{
    // Large, because small reads batch badly.
    private const int ReceiveBuffer = 65536;
    // Long enough for a starved machine: a question takes no time, and a write that is stuck for good is ended all the same.
    private const int WriteTimeoutMs = 2000;

    private readonly SerialPort _port;
    private readonly Stream _stream;

    private readonly IDisposable? _held;

    private SerialLink(SerialPort port, IDisposable? held) => (_port, _stream, _held) = (port, port.BaseStream, held);

    /// <summary>Opens the port; every failure is given its real cause.</summary>
    /// <param name="address">The port.</param>
    /// <param name="held">Let go of when the link ends.</param>
    /// <exception cref="LinkEndedException">The port cannot be opened.</exception>
    public static SerialLink Open(SerialAddress address, IDisposable? held = null)
    {
        var port = new SerialPort(address.Port, address.Baud, address.Parity, address.DataBits, address.StopBits == 2 ? StopBits.Two : StopBits.One)
        {
            ReadBufferSize = ReceiveBuffer,
            WriteTimeout = WriteTimeoutMs,
        };
        try
        {
            port.Open();
            // Bytes from before the opening have no known age.
            port.DiscardInBuffer();
            return new SerialLink(port, held);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException or PlatformNotSupportedException)
        {
            port.Dispose();
            throw new LinkEndedException(SerialPortTrouble.WhyNotOpened(address, e.Message), e);
        }
    }

    /// <inheritdoc/>
    public int Read(byte[] buffer, int offset, int count)
    {
        try
        {
            var read = _stream.Read(buffer, offset, count);
            return read > 0 ? read : throw new LinkEndedException(LinkDiagnostics.HungUp(_port.PortName));
        }
        catch (Exception e) when (e is IOException and not LinkEndedException or ObjectDisposedException or InvalidOperationException or OperationCanceledException or UnauthorizedAccessException)
        {
            throw new LinkEndedException(LinkDiagnostics.HungUp(_port.PortName), e);
        }
    }

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        try
        {
            _stream.Write(bytes);
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException or TimeoutException or UnauthorizedAccessException)
        {
            throw new LinkEndedException(LinkDiagnostics.HungUp(_port.PortName), e);
        }
    }

    /// <summary>Ends a pending read. Disposes the stream and not the port: closing the port can hang for ever while a write is pending.</summary>
    public void Dispose()
    {
        try
        {
            _stream.Dispose();
        }
        catch (IOException)
        {
            // The device is gone; there is nothing left to close.
        }

        _held?.Dispose();
    }
}
