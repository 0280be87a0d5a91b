using System.Runtime.CompilerServices;
using System.Threading.Channels;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Search;

/// <summary>Searches several ports at once, each on a thread of its own, and hands on each port's finding when it is there.</summary>
/// <param name="settings">How.</param>
/// <param name="time">For pauses and times of arrival.</param>
/// <param name="tree">Where the system tells of its devices.</param>
/// <param name="claim">Called before a port is opened; throws <see cref="PortException"/> when it is not to be. Nothing: all may.</param>
internal sealed class PortSearch(SearchSettings settings, TimeProvider time, SystemTree tree, Action<string>? claim = null)
{
    /// <summary>
    /// One finding for each port, in the order in which they come. A port that cannot be opened or goes away is a finding with <see cref="PortFinding.Trouble"/>;
    /// the others go on. Names of one port twice are looked at once.
    /// </summary>
    /// <param name="ports">Device paths or COM names; <see cref="SerialPorts.Adapters"/> names those that are plugged in.</param>
    /// <param name="progress">Told what is being done; may be called from any thread.</param>
    /// <param name="stop">Ends the search within a tenth of a second or so; what is found by then has been handed on.</param>
    /// <exception cref="OperationCanceledException"><paramref name="stop"/> was asked for.</exception>
    public async IAsyncEnumerable<PortFinding> Search(IEnumerable<string> ports, IProgress<SearchProgress>? progress, [EnumeratorCancellation] CancellationToken stop)
    {
        var findings = Channel.CreateUnbounded<PortFinding>();
        using var over = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var searching = ports.DistinctBy(SystemTree.RealPath)
            .Select(port => Task.Factory.StartNew(() => findings.Writer.TryWrite(Look(port, progress, over.Token)), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)).ToList();
        var all = Task.WhenAll(searching);
        _ = all.ContinueWith(done => findings.Writer.TryComplete(done.Exception?.InnerException), CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
        try
        {
            await foreach (var finding in findings.Reader.ReadAllAsync(stop))
                yield return finding;
        }
        finally
        {
            // Whoever stops reading gets his ports back before he goes on.
            await over.CancelAsync();
            await all.ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
        }
    }

    private PortFinding Look(string port, IProgress<SearchProgress>? progress, CancellationToken stop)
    {
        try
        {
            claim?.Invoke(port);
            return new PortProbe(port, settings, time, tree, progress).Find(stop);
        }
        catch (PortException e)
        {
            return new PortFinding { Port = port, Link = SerialPorts.StableName(tree, port), Trouble = e.Diagnostic };
        }
    }
}
