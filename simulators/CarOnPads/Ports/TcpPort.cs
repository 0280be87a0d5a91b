using System.Net;
using System.Net.Sockets;
using CarOnPads.Runtime;

namespace CarOnPads.Ports;

/// <summary>A pad's cable as a TCP listener on loopback, as behind a device server. One reader at a time.</summary>
sealed class TcpPort : IPadPort
{
    const int SendRoom = 65536;
    Socket? _listener;
    Socket? _reader;
    IPEndPoint _endPoint;

    /// <summary>Listens on a loopback port; 0 takes a free one.</summary>
    /// <exception cref="SimulatorException">CP-303 the port is taken.</exception>
    public TcpPort(int port)
    {
        _endPoint = new IPEndPoint(IPAddress.Loopback, port);
        Replug();
    }

    /// <inheritdoc/>
    public string Address => $"tcp://{_endPoint}";

    /// <inheritdoc/>
    public bool Plugged => _listener is not null;

    /// <inheritdoc/>
    public bool HasReader
    {
        get
        {
            Welcome();
            return _reader is not null;
        }
    }

    /// <inheritdoc/>
    public long LostBytes { get; private set; }

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        Welcome();
        var taken = 0;
        if (_reader is { } reader)
        {
            taken = reader.Send(bytes, SocketFlags.None, out var error);
            if (error is not (SocketError.Success or SocketError.WouldBlock))
                Part();
        }

        LostBytes += bytes.Length - Math.Max(0, taken);
    }

    /// <inheritdoc/>
    public int Read(Span<byte> buffer)
    {
        Welcome();
        if (_reader is not { } reader)
            return 0;
        var read = reader.Receive(buffer, SocketFlags.None, out var error);
        if (error == SocketError.WouldBlock)
            return 0;
        if (error == SocketError.Success && read > 0)
            return read;
        Part();
        return 0;
    }

    /// <inheritdoc/>
    public void Unplug()
    {
        _listener?.Dispose();
        _listener = null;
        Part();
    }

    /// <inheritdoc/>
    public void Replug()
    {
        if (_listener is not null)
            return;
        var listener = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            if (!OperatingSystem.IsWindows())
                listener.SetSocketOption(SocketOptionLevel.Socket, SocketOptionName.ReuseAddress, true);
            listener.Bind(_endPoint);
            listener.Listen(1);
            listener.Blocking = false;
        }
        catch (SocketException e)
        {
            listener.Dispose();
            throw new SimulatorException("CP-303", $"Cannot listen on {Address}: {e.Message}", "Choose another port, or 0 for a free one.");
        }

        _listener = listener;
        _endPoint = (IPEndPoint)listener.LocalEndPoint!;
    }

    /// <summary>Hangs up.</summary>
    public void Dispose() => Unplug();

    void Welcome()
    {
        while (_listener is { } listener && listener.Poll(0, SelectMode.SelectRead))
        {
            Socket caller;
            try
            {
                caller = listener.Accept();
            }
            catch (SocketException)
            {
                return; // the caller went away between the two calls
            }

            Admit(caller);
        }
    }

    // A serial port has one reader: a second caller is turned away while the first is there.
    void Admit(Socket caller)
    {
        if (_reader is { } present && present.Poll(0, SelectMode.SelectRead) && present.Available == 0)
            Part();
        if (_reader is not null)
        {
            caller.Dispose();
            return;
        }

        caller.Blocking = false;
        caller.NoDelay = true;
        caller.SendBufferSize = SendRoom;
        _reader = caller;
    }

    void Part()
    {
        _reader?.Dispose();
        _reader = null;
    }
}
