using System.IO.Ports;

namespace ScaleLink.Probing.Ports;

/// <summary>A serial port that is listened to for a while.</summary>
internal sealed class ProbedPort : IDisposable
{
    private const int ReadBuffer = 65536;
    private const int WaitMs = 50;
    private const int WriteWithinMs = 500;

    private readonly SerialPort _port;
    private readonly TimeProvider _time;

    private ProbedPort(SerialPort port, TimeProvider time) => (_port, _time) = (port, time);

    /// <summary>Opens it.</summary>
    /// <exception cref="PortException">SL-471 not there, SL-472 not permitted, SL-473 held by another program, SL-474 no serial port.</exception>
    public static ProbedPort Open(string name, int baud, CharacterFormat format, TimeProvider time)
    {
        var port = new SerialPort(name, baud, format.Parity, format.DataBits, format.StopBits == 2 ? StopBits.Two : StopBits.One) { ReadBufferSize = ReadBuffer, ReadTimeout = WaitMs, WriteTimeout = WriteWithinMs };
        try
        {
            port.Open();
            return new ProbedPort(port, time);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException)
        {
            port.Dispose();
            throw new PortException(Why(name, e), e);
        }
    }

    /// <summary>
    /// Takes another rate and format without closing: closing and opening would reset boards that take a handshake line as their reset. What came before is
    /// thrown away.
    /// </summary>
    /// <returns>Whether the driver takes them.</returns>
    public bool TrySet(int baud, CharacterFormat format)
    {
        try
        {
            (_port.BaudRate, _port.Parity, _port.DataBits, _port.StopBits) = (baud, format.Parity, format.DataBits, format.StopBits == 2 ? StopBits.Two : StopBits.One);
            _port.DiscardInBuffer();
            return true;
        }
        catch (Exception e) when (e is IOException or ArgumentException && (OperatingSystem.IsWindows() || Path.Exists(_port.PortName)))
        {
            return false;
        }
        catch (Exception e) when (e is IOException or ArgumentException or InvalidOperationException or UnauthorizedAccessException)
        {
            throw Gone(e);
        }
    }

    /// <summary>Sends bytes.</summary>
    public void Write(byte[] bytes)
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

    /// <summary>Hands on what comes, until <paramref name="take"/> says that it is enough or the time is up.</summary>
    /// <exception cref="PortException">SL-475: the port went away.</exception>
    public void Listen(TimeSpan span, Func<byte[], bool> take, CancellationToken stop)
    {
        var (start, buffer) = (_time.GetTimestamp(), new byte[ReadBuffer]);
        while (_time.GetElapsedTime(start) < span && !stop.IsCancellationRequested)
        {
            try
            {
                _port.BaseStream.ReadTimeout = (int)Math.Clamp((span - _time.GetElapsedTime(start)).TotalMilliseconds, 1, WaitMs);
                var read = _port.BaseStream.Read(buffer, 0, buffer.Length);
                if (read == 0)
                    throw Gone(null);
                if (!take(buffer[..read]))
                    return;
            }
            catch (TimeoutException)
            {
                // Nothing came in that time.
            }
            catch (Exception e) when (e is IOException or InvalidOperationException or OperationCanceledException or UnauthorizedAccessException)
            {
                throw Gone(e);
            }
        }
    }

    /// <summary>Disposes the stream and not the port: closing the port can hang for ever while a write is pending.</summary>
    public void Dispose()
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

    private PortException Gone(Exception? cause) => new(new Diagnostic(ProbeCodes.PortLost, $"{_port.PortName} went away while it was listened to.", "Check cable, adapter and hub, then try again."), cause);

    // The serial library says "access denied" whatever the cause: the system is asked.
    private static Diagnostic Why(string name, Exception e)
    {
        if (!OperatingSystem.IsWindows() && !Path.Exists(name))
            return new Diagnostic(ProbeCodes.PortMissing, $"{name} is not there.", "Plug the adapter in; scalelink doctor lists what is wrong with adapters.");
        if (OperatingSystem.IsLinux() && !Ownership.MayOpen(name))
            return new Diagnostic(ProbeCodes.PortForbidden, $"{name} may not be opened by this user.", $"scalelink doctor {name} says which group is missed.");
        if (OperatingSystem.IsLinux() && !IsTerminal(name))
            return new Diagnostic(ProbeCodes.NotSerialPort, $"{name} is not a serial port.", "Name the adapter's device, such as /dev/serial/by-path/....");
        return new Diagnostic(ProbeCodes.PortHeld, $"{name} is held by another program: {e.Message}", "Stop the daemon, or whatever else reads there; scalelink doctor names it.");
    }

    private static bool IsTerminal(string name) => SystemTree.RealPath(name) is var node && (node.StartsWith("/dev/tty", StringComparison.Ordinal) || node.StartsWith("/dev/pts/", StringComparison.Ordinal));
}
