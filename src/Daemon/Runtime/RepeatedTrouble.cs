namespace ScaleLink.Daemon.Runtime;

/// <summary>
/// Work that is tried again and again and may fail each time, such as a note in a ledger whose disk is full: the first failure is told, the ones like it
/// are counted, and so is their end.
/// </summary>
/// <param name="what">What fails, for the log.</param>
/// <param name="log">The log.</param>
internal sealed class RepeatedTrouble(string what, ILogger log)
{
    private string? _told;
    private int _times;

    /// <summary>Does it; whatever it runs into ends here. True when it was done.</summary>
    public bool Try(Action act)
    {
        try
        {
            act();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            Tell(e);
            return false;
        }

        if (_told is not null)
            log.LogInformation("{What}: goes again after {Times} failures", what, _times);
        (_told, _times) = (null, 0);
        return true;
    }

    private void Tell(Exception e)
    {
        _times++;
        if (e.Message == _told)
            return;
        _told = e.Message;
        log.LogWarning(e, "{What} failed, and is tried again", what);
    }
}
