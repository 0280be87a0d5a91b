using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links;

/// <summary>
/// A source of bytes that is used once: its first fault is final, and a factory makes the next one.
/// After a hang-up a serial port object still says that it is open and its later reads hang, so nothing is ever asked of it again.
/// </summary>
internal interface ILink : IDisposable
{
    /// <summary>Blocks until bytes come; gives their number, at least 1.</summary>
    /// <exception cref="LinkEndedException">The link has ended, or was disposed.</exception>
    int Read(byte[] buffer, int offset, int count);

    /// <summary>What is not as asked though the link is open, if anything.</summary>
    Diagnostic? Reservation => null;

    /// <summary>Sends bytes to the pad.</summary>
    /// <exception cref="LinkEndedException">The link has ended.</exception>
    void Write(ReadOnlySpan<byte> bytes);
}

/// <summary>Makes links.</summary>
internal interface ILinkFactory
{
    /// <summary>Opens the port, or says why not.</summary>
    /// <exception cref="LinkEndedException">The port cannot be opened.</exception>
    ILink Open(LinkAddress address);
}
