using System.Net.Sockets;
using Grpc.Core;
using Grpc.Core.Interceptors;
using ScaleLink.Measure.Diagnostics;

namespace ScaleLink.Api;

/// <summary>
/// For callers of the services that end in <c>Control</c>: numbers every step, and when its answer is lost asks the daemon what became of it before anything
/// is reported. The step is never taken twice. Blocking calls go through as they are.
/// </summary>
/// <param name="time">The caller's clock.</param>
public sealed class StepAnswers(TimeProvider time) : Interceptor
{
    // A link that is down is not asked in a tight loop.
    private static readonly TimeSpan First = TimeSpan.FromSeconds(5), Question = TimeSpan.FromSeconds(4), Pause = TimeSpan.FromSeconds(0.5);

    /// <summary>For how long the daemon is asked about a step whose answer was lost; 30 s unless given.</summary>
    public TimeSpan AskFor { get; init; } = Longest;

    /// <summary>As long as people wait before they look for themselves.</summary>
    public static TimeSpan Longest { get; } = TimeSpan.FromSeconds(30);

    /// <summary>So long a daemon is asked that answers "still under way".</summary>
    public static TimeSpan LongestUnderWay { get; } = TimeSpan.FromMinutes(2);

    /// <summary>The answer to a step is late or lost; the daemon is being asked about it.</summary>
    public event Action? Late;

    /// <inheritdoc/>
    public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(
        TRequest request, ClientInterceptorContext<TRequest, TResponse> context, AsyncUnaryCallContinuation<TRequest, TResponse> continuation)
    {
        ArgumentNullException.ThrowIfNull(continuation);
        var number = Guid.NewGuid().ToString("N");
        var step = continuation(request, Numbered(context, number, asksOnly: false, context.Options.Deadline ?? In(First)));
        var answer = Answer(step, () => continuation(request, Numbered(context, number, asksOnly: true, In(Question))), context.Options.CancellationToken);
        return new AsyncUnaryCall<TResponse>(answer, step.ResponseHeadersAsync, step.GetStatus, step.GetTrailers, step.Dispose);
    }

    private static ClientInterceptorContext<TRequest, TResponse> Numbered<TRequest, TResponse>(ClientInterceptorContext<TRequest, TResponse> context, string number, bool asksOnly, DateTime deadline)
        where TRequest : class
        where TResponse : class
    {
        var headers = new Metadata { { WireSteps.Number, number } };
        if (asksOnly)
            headers.Add(WireSteps.Ask, "yes");
        foreach (var given in context.Options.Headers ?? [])
            headers.Add(given);
        return new(context.Method, context.Host, context.Options.WithHeaders(headers).WithDeadline(deadline));
    }

    private async Task<TResponse> Answer<TResponse>(AsyncUnaryCall<TResponse> step, Func<AsyncUnaryCall<TResponse>> ask, CancellationToken stop)
    {
        try
        {
            return await step.ResponseAsync.ConfigureAwait(false);
        }
        catch (RpcException e) when (IsLost(e) && !WasNeverSent(e) && !stop.IsCancellationRequested)
        {
            Late?.Invoke();
        }

        var (asking, since) = (time.GetTimestamp(), time.GetTimestamp());
        while (true)
        {
            try
            {
                using var question = ask();
                return await question.ResponseAsync.ConfigureAwait(false);
            }
            catch (RpcException e) when (IsUnderWay(e) && time.GetElapsedTime(asking) < LongestUnderWay)
            {
                since = time.GetTimestamp();
            }
            catch (RpcException e) when (IsLost(e) && !stop.IsCancellationRequested)
            {
                if (time.GetElapsedTime(since) > AskFor)
                    throw new StepUnknownException(e);
            }

            await Task.Delay(Pause, time, stop).ConfigureAwait(false);
        }
    }

    private DateTime In(TimeSpan span) => DateTime.SpecifyKind(time.GetUtcNow().UtcDateTime + span, DateTimeKind.Utc);

    private static bool IsUnderWay(RpcException failure) => failure.Reasons() is [{ Code: var code }, ..] && code == ConnectionCodes.StepUnderWay.Text;

    // What the daemon itself says is an answer. A browser tells no more of a lost connection than that something failed.
    private static bool IsLost(RpcException failure) => failure.Reasons().Count == 0 && failure.StatusCode switch
    {
        StatusCode.DeadlineExceeded or StatusCode.Unavailable or StatusCode.Cancelled => true,
        StatusCode.Internal or StatusCode.Unknown => failure.Status.DebugException is HttpRequestException or IOException,
        _ => false,
    };

    // Whoever finds nobody to connect to has sent nothing.
    private static bool WasNeverSent(RpcException failure) => failure.Status.DebugException is SocketException or HttpRequestException
    {
        HttpRequestError: HttpRequestError.ConnectionError or HttpRequestError.NameResolutionError or HttpRequestError.InvalidResponse or HttpRequestError.VersionNegotiationError,
    };
}

/// <summary>Neither a step was answered nor the question what became of it: whether it is on record is not known (SL-426).</summary>
public sealed class StepUnknownException : RpcException
{
    /// <summary>After the last question that was not answered.</summary>
    public StepUnknownException(RpcException last)
        : base(last?.Status ?? Status.DefaultCancelled)
    {
    }
}
