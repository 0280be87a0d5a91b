namespace ScaleLink.Board.Connection;

/// <summary>Waits between attempts: short at first, never longer than two seconds, for ever.</summary>
internal sealed class Backoff
{
    private static readonly TimeSpan First = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(2);
    private TimeSpan _next = First;

    public TimeSpan Next()
    {
        var wait = _next;
        _next = wait * 2 < Longest ? wait * 2 : Longest;
        return wait;
    }

    public void Reset() => _next = First;
}
