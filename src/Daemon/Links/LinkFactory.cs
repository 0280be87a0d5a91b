using ScaleLink.Daemon.Links.Terminals;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links;

/// <summary>Opens serial ports and TCP connections.</summary>
/// <param name="locks">Keep other daemons off a serial port.</param>
internal sealed class LinkFactory(PortLocks locks) : ILinkFactory
{
    /// <inheritdoc/>
    public ILink Open(LinkAddress address) => address switch
    {
        SerialAddress serial => OpenSerial(serial),
        TcpAddress tcp => TcpLink.Open(tcp),
        _ => throw new ArgumentOutOfRangeException(nameof(address), address, "Not a kind of link."),
    };

    private ILink OpenSerial(SerialAddress address)
    {
        // A port that is not there is told of as such, whoever waits for it.
        if (SerialPortTrouble.BeforeOpening(address) is { } trouble)
            throw new LinkEndedException(trouble);
        var held = locks.Take(address.Port);
        try
        {
            return OperatingSystem.IsLinux() && address.ReadBy == PortReader.System ? TerminalLink.Open(address, held) : SerialLink.Open(address, held);
        }
        catch
        {
            held?.Dispose();
            throw;
        }
    }
}
