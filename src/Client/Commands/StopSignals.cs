using System.Runtime.InteropServices;

namespace ScaleLink.Client.Commands;

/// <summary>Turns Ctrl-C, SIGTERM and a closed terminal into a token, so that screens and children are put away. A second Ctrl-C ends at once.</summary>
internal sealed class StopSignals : IDisposable
{
    private readonly CancellationTokenSource _source;
    private readonly List<PosixSignalRegistration> _registrations;

    public StopSignals(CancellationToken outer)
    {
        _source = CancellationTokenSource.CreateLinkedTokenSource(outer);
        _registrations = [.. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP, PosixSignal.SIGQUIT }.Select(s => PosixSignalRegistration.Create(s, OnSignal))];
    }

    public CancellationToken Token => _source.Token;

    public void Dispose()
    {
        foreach (var registration in _registrations)
            registration.Dispose();
        _source.Dispose();
    }

    private void OnSignal(PosixSignalContext context)
    {
        if (_source.IsCancellationRequested)
            return;
        context.Cancel = true;
        _source.Cancel();
    }
}
