using System.Collections.Concurrent;
using ScaleLink.Api.V1;
using Shared.Rig;
using Xunit.Sdk;

namespace Bay.Tests.Replay;

/// <summary>Plays every scene once, three at a time: playing mostly waits. The zeros come from the scene of empty pads.</summary>
public sealed class Playback : IAsyncLifetime
{
    private readonly ConcurrentDictionary<string, string> _outcomes = new();
    private readonly ConcurrentDictionary<string, Exception> _failures = new();
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-zeros-");

    private string Ledger => Path.Combine(_folder.FullName, "ledger.db");

    public async ValueTask InitializeAsync()
    {
        Zero(Scene.Empty, null);
        Zero(Scene.EmptyText, Ledger);
        await Parallel.ForEachAsync(Scene.All.Keys, new ParallelOptions { MaxDegreeOfParallelism = 3 }, (scene, _) =>
        {
            try
            {
                _outcomes[scene] = Play(scene);
            }
            catch (Exception e)
            {
                _failures[scene] = e;
            }

            return ValueTask.CompletedTask;
        });
    }

    public ValueTask DisposeAsync()
    {
        _folder.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    /// <summary>What was published while the scene was played.</summary>
    internal string Of(string scene) => _failures.TryGetValue(scene, out var failure) ? throw new InvalidOperationException($"{scene} could not be played.", failure) : _outcomes[scene];

    // A scene ends, whether a busy machine has got its zeros by then or not: played again.
    private void Zero(string scene, string? ledger)
    {
        for (var tries = 1; ; tries++)
            try
            {
                TakeZeros(scene, ledger);
                return;
            }
            catch (XunitException) when (tries < 3)
            {
            }
    }

    private void TakeZeros(string scene, string? ledger)
    {
        using var bay = new ReplayBay(scene, ledger);
        bay.Play();
        Wait.Until(() => bay.Pads[^1].Pads.All(p => p.State == PadState.Live), TimeSpan.FromSeconds(20), "empty pads live");
        Wait.Until(() => bay.Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "replay" }).Results.All(r => r.Zero is { Counts: 0 }), TimeSpan.FromSeconds(20), "empty pads of no offset zeroed");
        bay.Daemon.Dispose();
        File.Copy(bay.LedgerFile, Ledger, overwrite: true);
    }

    /// <summary>Plays a scene by itself.</summary>
    internal string Play(string name)
    {
        var scene = Scene.All[name];
        using var bay = new ReplayBay(name, Ledger, scene.Edit);
        bay.PlayToTheEnd();
        return Outcome.Of(bay, scene);
    }
}
