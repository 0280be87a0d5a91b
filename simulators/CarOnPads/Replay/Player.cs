using CarOnPads.Ports;

namespace CarOnPads.Replay;

/// <summary>Plays link recordings of one run together, each through a port of its own. Not thread-safe.</summary>
sealed class Player : IDisposable
{
    /// <summary>A host throws away what was there before it had opened the port: playing waits that long behind the opening.</summary>
    public const long OpeningNs = 1_000_000_000;

    readonly List<IPlaying> _playings = [];
    long _startNs = long.MaxValue;

    /// <summary>Opens a port for each link recording.</summary>
    /// <param name="recordings">Link recordings of one run share their clock, and keep their places against each other; one alone may begin anywhere.</param>
    /// <param name="port">The port for a link recording's name.</param>
    public Player(IReadOnlyList<NamedRecording> recordings, Func<string, IPadPort> port)
    {
        try
        {
            foreach (var (name, recording) in recordings)
            {
                _playings.Add(recording.Header.Protocol == "modbus-rtu" ? new AnsweredPlaying(recording.Events, port(name)) : new SpokenPlaying(recording.Events, port(name)));
                _startNs = Math.Min(_startNs, recording.Events.Count > 0 ? recording.Events[0].AtNs : long.MaxValue);
            }
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>The ports, in the order of the link recordings.</summary>
    public IEnumerable<IPadPort> Ports => _playings.Select(p => p.Port);

    /// <summary>Somebody has every port open.</summary>
    public bool HasReaders => Ports.All(p => p.HasReader);

    /// <summary>All of it has been played.</summary>
    public bool IsOver => _playings.TrueForAll(p => p.IsOver);

    /// <summary>Plays up to an instant, ns since the first event.</summary>
    public void AdvanceTo(long ns)
    {
        foreach (var playing in _playings)
            playing.AdvanceTo(_startNs + ns);
    }

    /// <summary>Hangs up all ports.</summary>
    public void Dispose()
    {
        foreach (var playing in _playings)
            playing.Dispose();
    }
}
