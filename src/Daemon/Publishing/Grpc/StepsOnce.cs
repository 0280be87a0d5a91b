using Grpc.Core;
using Grpc.Core.Interceptors;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Takes a numbered step once, and tells whoever lost its answer what became of it (<see cref="WireSteps"/>).</summary>
internal sealed class StepsOnce(LedgerDatabase ledger, TimeProvider time) : Interceptor
{
    /// <summary>So many steps are remembered with their answers: an hour of a busy bay. Older ones are asked of the ledger.</summary>
    public const int Remembered = 500;

    // Shorter than any caller waits for an answer.
    private static readonly TimeSpan LongestAnswer = TimeSpan.FromSeconds(2);

    private readonly Lock _gate = new();
    private readonly Dictionary<string, Task<object>> _steps = new(StringComparer.Ordinal);
    private readonly Queue<string> _oldest = [];

    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        if (ControlCall.Action(context.Method) is null || context.RequestHeaders.GetValue(WireSteps.Number) is not { } given)
            return await continuation(request, context);
        var number = Read(given);
        var (step, mine) = Known(number, asksOnly: context.RequestHeaders.Get(WireSteps.Ask) is not null);
        if (mine is not null)
            await Take(mine, number, () => continuation(request, context));
        return await Answer(step, context.CancellationToken) as TResponse
            ?? throw ApiErrors.BadRequest(ServiceCodes.NumberUnusable, WireSteps.Number, "That number belongs to a step of another kind.", "Give every step a number of its own.");
    }

    // Whoever took the step has it done here; whoever asks is told in time that it is not.
    private async Task<object> Answer(Task<object> step, CancellationToken stop)
    {
        try
        {
            return await step.WaitAsync(LongestAnswer, time, stop);
        }
        catch (TimeoutException) when (!step.IsCompleted)
        {
            throw ApiErrors.UnderWay();
        }
    }

    private static string Read(string number) => number.Length is > 0 and <= WireSteps.LongestNumber && number.All(char.IsAsciiLetterOrDigit)
        ? number
        : throw ApiErrors.BadRequest(ServiceCodes.NumberUnusable, WireSteps.Number, $"The number of a step is 1 to {WireSteps.LongestNumber} letters and digits.", "Give every step a number of its own.");

    // With something to be completed where the step is to be taken now.
    private (Task<object> Step, TaskCompletionSource<object>? Mine) Known(string number, bool asksOnly)
    {
        lock (_gate)
        {
            if (_steps.TryGetValue(number, out var known))
                return (known, null);
            // Whoever asks about a step that never came has given it up: should it come late, it is not taken.
            var mine = asksOnly || ledger.EntriesOfStep(number).Count > 0 ? null : new TaskCompletionSource<object>(TaskCreationOptions.RunContinuationsAsynchronously);
            var step = mine?.Task ?? Task.FromException<object>(WhatBecameOf(number));
            Remember(number, step);
            return (step, mine);
        }
    }

    private async Task Take<TResponse>(TaskCompletionSource<object> mine, string number, Func<Task<TResponse>> take)
        where TResponse : class
    {
        StepNumbers.Begin(number);
        try
        {
            mine.SetResult(await take());
        }
        catch (Exception e) when (e is OperationCanceledException or RpcException { StatusCode: StatusCode.Cancelled })
        {
            // Its caller has gone while it waited for something.
            mine.SetException(WhatBecameOf(number));
        }
        catch (Exception e)
        {
            mine.SetException(e);
        }
    }

    private RpcException WhatBecameOf(string number) => ledger.EntriesOfStep(number) switch
    {
        [] => ApiErrors.NotFound(ConnectionCodes.StepNotOnRecord, "The step is not on record.", "Take it again."),
        [var only] => OnRecord($"entry {only}"),
        [var first, .., var last] => OnRecord($"entries {first} to {last}"),
    };

    private static RpcException OnRecord(string entries) =>
        ApiErrors.NotNow(ConnectionCodes.StepOnRecord, $"The step is on record as {entries}; its answer was lost.", "Look at it; it need not be taken again.");

    private void Remember(string number, Task<object> step)
    {
        _steps[number] = step;
        _oldest.Enqueue(number);
        while (_oldest.Count > Remembered && _steps[_oldest.Peek()].IsCompleted)
            _steps.Remove(_oldest.Dequeue());
    }
}
