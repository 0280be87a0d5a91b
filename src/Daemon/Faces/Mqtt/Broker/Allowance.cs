namespace ScaleLink.Daemon.Faces.Mqtt.Broker;

/// <summary>So many things and so many bytes together, each under a key of its own.</summary>
internal sealed class Allowance(int things, long bytes)
{
    private readonly Lock _gate = new();
    private readonly Dictionary<string, int> _taken = new(StringComparer.Ordinal);
    private long _sum;

    /// <summary>Whether it still fits, in the place of what the key had; only then it is counted.</summary>
    public bool Take(string key, int size)
    {
        lock (_gate)
        {
            var had = _taken.GetValueOrDefault(key);
            if ((!_taken.ContainsKey(key) && _taken.Count >= things) || _sum - had + size > bytes)
                return false;
            _taken[key] = size;
            _sum += size - had;
            return true;
        }
    }

    public void GiveBack(string key)
    {
        lock (_gate)
            if (_taken.Remove(key, out var had))
                _sum -= had;
    }
}
