using ScaleLink.Daemon.Ports;

namespace ScaleLink.Daemon.Links;

/// <summary>Opens serial ports and TCP connections.</summary>
internal sealed class LinkFactory(PortLocks locks) : ILinkFactory
{
    /// <inheritdoc/>
    public ILink Open(LinkAddress address) => address switch
    {
        SerialAddress serial => SerialLink.Open(serial, locks),
        TcpAddress tcp => TcpLink.Open(tcp),
        _ => throw new ArgumentOutOfRangeException(nameof(address), address, "Not a kind of link."),
    };
}
