using System.IO.Ports;

namespace ScaleLink.Probing.Ports;

/// <summary>A port read by the serial library of .NET.</summary>
internal sealed class LibraryPort : ProbedPort
{
    private const int ReadBuffer = 65536;
    private const int WriteWithinMs = 500;

    private readonly SerialPort _port;

    /// <exception cref="IOException">It cannot be opened; others of the library's too.</exception>
    public LibraryPort(string name, int baud, CharacterFormat format, TimeProvider time)
        : base(name, time)
    {
        _port = new SerialPort(name, baud, format.Parity, format.DataBits, StopsOf(format)) { ReadBufferSize = ReadBuffer, WriteTimeout = WriteWithinMs };
        try
        {
            _port.Open();
        }
        catch
        {
            _port.Dispose();
            throw;
        }
    }

    public override bool TrySet(int baud, CharacterFormat format)
    {
        try
        {
            (_port.BaudRate, _port.Parity, _port.DataBits, _port.StopBits) = (baud, format.Parity, format.DataBits, StopsOf(format));
            _port.DiscardInBuffer();
            return true;
        }
        catch (Exception e) when (e is IOException or ArgumentException && _port.IsOpen)
        {
            return false;
        }
        catch (Exception e) when (e is IOException or ArgumentException or InvalidOperationException or UnauthorizedAccessException)
        {
            throw Gone(e);
        }
    }

    public override void Write(byte[] bytes)
    {
        try
        {
            _port.BaseStream.Write(bytes);
        }
        catch (Exception e) when (e is IOException or TimeoutException or InvalidOperationException)
        {
            throw Gone(e);
        }
    }

    /// <summary>Disposes the stream and not the port: closing the port can hang for ever while a write is pending.</summary>
    public override void Dispose()
    {
        try
        {
            _port.BaseStream.Dispose();
        }
        catch (Exception e) when (e is IOException or InvalidOperationException)
        {
            // The device is gone; there is nothing left to close.
        }
    }

    protected override int Read(byte[] buffer, int milliseconds)
    {
        try
        {
            _port.BaseStream.ReadTimeout = milliseconds;
            return _port.BaseStream.Read(buffer, 0, buffer.Length) is > 0 and var read ? read : throw Gone(null);
        }
        catch (TimeoutException)
        {
            // Nothing came in that time.
            return 0;
        }
        catch (Exception e) when (e is IOException or InvalidOperationException or OperationCanceledException or UnauthorizedAccessException)
        {
            throw Gone(e);
        }
    }

    private static StopBits StopsOf(CharacterFormat format) => format.StopBits == 2 ? StopBits.Two : StopBits.One;
}
