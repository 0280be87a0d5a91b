using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Probing.Ports;

namespace ScaleLink.Daemon.Setup;

/// <summary>The locks of the ports that are searched and listened to: the superuser may open a port that a bay reads, and would take half of its bytes.</summary>
internal sealed class SearchedPorts(PortLocks locks) : IDisposable
{
    private readonly Lock _lock = new();
    private readonly List<IDisposable> _held = [];

    /// <summary>Takes the lock of a port.</summary>
    /// <exception cref="PortException">SL-108: another daemon reads there.</exception>
    public void Take(string port)
    {
        try
        {
            if (locks.Take(port) is not { } held)
                return;
            lock (_lock)
                _held.Add(held);
        }
        catch (LinkEndedException e)
        {
            throw new PortException(new Diagnostic(LinkCodes.PortHeld, e.Diagnostic.Message, "End that daemon and search again, or name the other ports alone."), e);
        }
    }

    /// <summary>Gives all of them back.</summary>
    public void Release()
    {
        lock (_lock)
        {
            _held.ForEach(h => h.Dispose());
            _held.Clear();
        }
    }

    public void Dispose() => Release();
}
