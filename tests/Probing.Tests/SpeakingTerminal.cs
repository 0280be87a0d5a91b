using System.Runtime.Versioning;
using CarOnPads.Ports;

namespace Probing.Tests;

/// <summary>A pseudo-terminal on which somebody says the same again and again while it is open.</summary>
[UnsupportedOSPlatform("windows")]
internal sealed class SpeakingTerminal : IDisposable
{
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(20);

    private readonly PseudoTerminal _terminal = new();
    private readonly CancellationTokenSource _over = new();
    private readonly Task _speaking;

    /// <param name="said">In turn, one in 20 ms.</param>
    public SpeakingTerminal(params byte[][] said) => _speaking = Task.Run(async () =>
    {
        for (var at = 0; !_over.IsCancellationRequested; at++)
        {
            if (_terminal.HasReader)
                _terminal.Write(said[at % said.Length]);
            await Task.Delay(Between, CancellationToken.None);
        }
    });

    public string Path => _terminal.SlavePath;

    public void Dispose()
    {
        _over.Cancel();
        _speaking.GetAwaiter().GetResult();
        _over.Dispose();
        _terminal.Dispose();
    }
}
