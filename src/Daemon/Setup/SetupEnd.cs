namespace ScaleLink.Daemon.Setup;

/// <summary>Ends the setting up once the bay file is written: the answer and the last word on the streams first.</summary>
internal sealed class SetupEnd(IHostApplicationLifetime lifetime, TimeProvider time) : IDisposable
{
    private static readonly TimeSpan LastWord = TimeSpan.FromMilliseconds(500);
    private ITimer? _timer;

    /// <summary>The bay file is written, and the daemon goes over to the bay.</summary>
    public bool HasCome { get; private set; }

    public void Come()
    {
        HasCome = true;
        _timer = time.CreateTimer(_ => lifetime.StopApplication(), null, LastWord, Timeout.InfiniteTimeSpan);
    }

    public void Dispose() => _timer?.Dispose();
}
