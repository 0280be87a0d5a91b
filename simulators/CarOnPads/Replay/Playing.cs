using CarOnPads.Ports;

namespace CarOnPads.Replay;

/// <summary>One link recording on its way through a port. Knows no clock: it is told how far playing has come.</summary>
interface IPlaying : IDisposable
{
    /// <summary>The cable that it plays on.</summary>
    IPadPort Port { get; }

    /// <summary>Everything in it has been played.</summary>
    bool IsOver { get; }

    /// <summary>Plays up to an instant of the link recording, ns.</summary>
    void AdvanceTo(long ns);
}
