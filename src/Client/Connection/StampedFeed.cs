using System.Runtime.CompilerServices;
using System.Threading.Channels;
using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Client.Age;

namespace ScaleLink.Client.Connection;

/// <summary>
/// One stream of the daemon that is opened again for ever, its messages judged at the moment the reader takes them. Speaks
/// at least four times a second even when nothing comes, so that a value grows old before the reader's eyes.
/// </summary>
internal sealed class StampedFeed<T>(DaemonConnection daemon, Func<CancellationToken, AsyncServerStreamingCall<T>> open, Func<T, Stamp?> stampOf, TimeSpan patience)
    where T : class
{
    private static readonly TimeSpan LongestSilence = TimeSpan.FromMilliseconds(250);
    private const int Queued = 32;

    private readonly AgeJudge<T> _judge = new(daemon.Clock, stampOf);
    private readonly Channel<T> _inbox = Channel.CreateBounded<T>(new BoundedChannelOptions(Queued) { FullMode = BoundedChannelFullMode.DropOldest });
    private volatile Diagnostic? _trouble;

    public async IAsyncEnumerable<Judged<T>> Watch([EnumeratorCancellation] CancellationToken stop)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var pump = Pump(end.Token);
        try
        {
            T? newest = null;
            Task<bool>? coming = null;
            while (true)
            {
                coming ??= _inbox.Reader.WaitToReadAsync(stop).AsTask();
                await Task.WhenAny(coming, Task.Delay(LongestSilence, daemon.Time, stop)).ConfigureAwait(false);
                stop.ThrowIfCancellationRequested();
                if (coming.IsCompleted)
                    coming = null;
                var isNew = _inbox.Reader.TryRead(out var message);
                newest = isNew ? message : newest;
                yield return _judge.Judge(newest, isNew, _trouble);
            }
        }
        finally
        {
            await end.CancelAsync().ConfigureAwait(false);
            await pump.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task Pump(CancellationToken stop)
    {
        var backoff = new Backoff();
        while (!stop.IsCancellationRequested)
        {
            try
            {
                await daemon.SeeClock(stop).ConfigureAwait(false);
                await Read(backoff, stop).ConfigureAwait(false);
                _trouble = new Diagnostic(ConnectionCodes.BrokenOff, $"The daemon at {daemon.Name} ended the stream.", "It is asked again.");
            }
            catch (RpcException e) when (!stop.IsCancellationRequested)
            {
                _trouble = e.StatusCode == StatusCode.Cancelled ? Silent() : DiagnosticReader.Read(e, daemon.Name);
            }
            catch (OperationCanceledException) when (!stop.IsCancellationRequested)
            {
                _trouble = Silent();
            }

            await Task.Delay(backoff.Next(), daemon.Time, stop).ConfigureAwait(false);
        }
    }

    // An open stream on which nothing comes is as good as a broken one.
    private async Task Read(Backoff backoff, CancellationToken stop)
    {
        using var silence = new CancellationTokenSource(patience, daemon.Time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(silence.Token, stop);
        using var call = open(either.Token);
        while (await call.ResponseStream.MoveNext(either.Token).ConfigureAwait(false))
        {
            silence.CancelAfter(patience);
            _inbox.Writer.TryWrite(call.ResponseStream.Current);
            _trouble = null;
            backoff.Reset();
        }
    }

    private Diagnostic Silent() => new(ConnectionCodes.TooSlow, $"The daemon at {daemon.Name} does not answer in time.", "See whether its machine is overloaded or asleep.");
}
