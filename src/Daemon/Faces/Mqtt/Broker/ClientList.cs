namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>Who is connected: those who have not yet said CONNECT, and the guests. The daemon itself is not counted and always gets in.</summary>
internal sealed class ClientList(BrokerCounts counts)
{
    private readonly Lock _gate = new();
    private readonly List<ClientAdapter> _unintroduced = [];
    private readonly HashSet<ClientAdapter> _guests = [];

    /// <summary>Somebody connected; where too many are silent, the one who has been so longest goes.</summary>
    public void Came(ClientAdapter client)
    {
        ClientAdapter? oldest = null;
        lock (_gate)
        {
            _unintroduced.Add(client);
            if (_unintroduced.Count > BrokerLimits.Unintroduced)
            {
                oldest = _unintroduced[0];
                _unintroduced.RemoveAt(0);
            }
        }

        if (oldest is null)
            return;
        counts.RefusedConnection();
        oldest.Cut();
    }

    /// <summary>It has said that it is the daemon, and is.</summary>
    public void AdmitOwn(ClientAdapter client)
    {
        lock (_gate)
            _unintroduced.Remove(client);
    }

    /// <summary>Whether there is room for a guest more; it is in the list then.</summary>
    public bool Admit(ClientAdapter client)
    {
        lock (_gate)
        {
            if (_guests.Count < BrokerLimits.Guests)
            {
                _unintroduced.Remove(client);
                return _guests.Add(client);
            }
        }

        counts.RefusedConnection();
        return false;
    }

    public void Left(ClientAdapter client)
    {
        lock (_gate)
        {
            _unintroduced.Remove(client);
            _guests.Remove(client);
        }
    }
}
