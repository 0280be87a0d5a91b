using System.ComponentModel;
using System.Runtime.Versioning;
using Microsoft.Win32.SafeHandles;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Probing.Ports;

namespace ScaleLink.Daemon.Links.Terminals;

/// <summary>
/// A serial port of Linux that sleeps until bytes come. The serial library looks at a port it reads some 900 times a second, which is more than half
/// of what an idle daemon costs; <c>poll(2)</c> wakes once for what has come.
/// </summary>
[SupportedOSPlatform("linux")]
internal sealed class TerminalLink : ILink
{
    // A question takes no time; a port that has no room for so long is stuck for good.
    private const int RoomWithinMs = 2000;

    private readonly string _name;
    private readonly SafeFileHandle _port;
    private readonly SafeFileHandle _bell;
    private readonly IDisposable? _held;

    private TerminalLink(string name, SafeFileHandle port, IDisposable? held) => (_name, _port, _bell, _held) = (name, port, Terminal.NewBell(), held);

    /// <inheritdoc/>
    public Diagnostic? Reservation { get; private init; }

    /// <summary>Opens the port; every failure is given its real cause.</summary>
    /// <param name="address">The port.</param>
    /// <param name="held">Let go of when the link ends.</param>
    /// <exception cref="LinkEndedException">The port cannot be opened.</exception>
    public static TerminalLink Open(SerialAddress address, IDisposable? held = null)
    {
        SafeFileHandle? port = null;
        try
        {
            port = Terminal.Open(address.Port);
            var asked = TerminalSettings.Of(address.Baud, address.Parity, address.DataBits, address.StopBits);
            // Some drivers leave out what they cannot do without a word.
            var reservation = Terminal.Set(port, asked).SendsAs(asked) ? null : LinkDiagnostics.LineNotAsAsked(address.Port, address.Line);
            return new TerminalLink(address.Port, port, held) { Reservation = reservation };
        }
        catch (Win32Exception e)
        {
            port?.Dispose();
            throw new LinkEndedException(SerialPortTrouble.WhyNotOpened(address, e.Message), e);
        }
    }

    /// <inheritdoc/>
    public int Read(byte[] buffer, int offset, int count)
    {
        try
        {
            using var use = new Use(this);
            while (Terminal.Wait(_port, Terminal.CanRead, _bell, milliseconds: -1))
            {
                if (Terminal.Read(_port, buffer.AsSpan(offset, count)) is { } read)
                    return read > 0 ? read : throw HungUp();
            }

            throw HungUp();
        }
        catch (Exception e) when (e is Win32Exception or ObjectDisposedException)
        {
            throw HungUp(e);
        }
    }

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        try
        {
            using var use = new Use(this);
            while (!bytes.IsEmpty)
            {
                if (Terminal.Write(_port, bytes) is { } taken)
                    bytes = bytes[taken..];
                else if (!Terminal.Wait(_port, Terminal.CanWrite, _bell, RoomWithinMs))
                    throw HungUp();
            }
        }
        catch (Exception e) when (e is Win32Exception or ObjectDisposedException)
        {
            throw HungUp(e);
        }
    }

    /// <summary>Ends what is pending. The port itself closes when nobody is in a call on it any more.</summary>
    public void Dispose()
    {
        try
        {
            Terminal.Ring(_bell);
        }
        catch (ObjectDisposedException)
        {
            return;
        }

        _port.Dispose();
        _bell.Dispose();
        _held?.Dispose();
    }

    private LinkEndedException HungUp(Exception? cause = null) => new(LinkDiagnostics.HungUp(_name), cause);

    // poll takes bare numbers: while it waits they must not be closed, or they could be another file's by then.
    private readonly ref struct Use : IDisposable
    {
        private readonly TerminalLink _link;

        public Use(TerminalLink link)
        {
            var isHeld = false;
            link._port.DangerousAddRef(ref isHeld);
            _link = link;
            link._bell.DangerousAddRef(ref isHeld);
        }

        public void Dispose()
        {
            _link._bell.DangerousRelease();
            _link._port.DangerousRelease();
        }
    }
}
