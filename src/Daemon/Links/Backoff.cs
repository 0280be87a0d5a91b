namespace ScaleLink.Daemon.Links;

/// <summary>Waits between attempts to open a port: doubling from a quarter second to one second and a half, or to half a minute where a device server lets in and turns away at once; with jitter, so that four pads behind one hub do not all knock at once.</summary>
internal sealed class Backoff(Random random)
{
    private static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan Longest = TimeSpan.FromMilliseconds(1500);
    private static readonly TimeSpan LongestTurnedAway = TimeSpan.FromSeconds(30);
    private TimeSpan _next = Shortest;

    /// <summary>How long to wait before the next attempt: the present step, more or less a fifth.</summary>
    public TimeSpan Next(bool isTurnedAway)
    {
        var longest = isTurnedAway ? LongestTurnedAway : Longest;
        var now = _next < longest ? _next : longest;
        _next = now * 2;
        return now * (0.8 + 0.4 * random.NextDouble());
    }

    /// <summary>The port opened and spoke: begin again with the shortest wait.</summary>
    public void Reset() => _next = Shortest;
}
