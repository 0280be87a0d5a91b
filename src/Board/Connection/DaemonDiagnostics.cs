using Grpc.Core;

namespace ScaleLink.Board.Connection;

/// <summary>What the page can meet on its way to the daemon, and what the daemon itself tells.</summary>
public static class DaemonDiagnostics
{
    /// <summary>The daemon does not answer although it may be there.</summary>
    public static Diagnostic Silent { get; } = new(ConnectionCodes.TooSlow, "The daemon does not answer in time.", "See whether its machine is overloaded or asleep. This page asks again by itself.");

    /// <summary>A question has waited for its answer for longer than usual.</summary>
    public static Diagnostic Late { get; } = new(ConnectionCodes.TooSlow, "No answer yet.", "This page goes on asking, and says what became of it.");

    /// <summary>Readings come faster than this page can take them.</summary>
    public static Diagnostic Behind { get; } = new(ConnectionCodes.DeviceTooSlow, "This device is too slow for the readings.", "The page asks for fewer by itself. Close other pages and programs on it.");

    /// <summary>Nothing has been heard since the page was opened.</summary>
    public static Diagnostic NotYet { get; } = new(ConnectionCodes.NoAnswer, "Waiting for the daemon's first reading.");

    /// <summary>The daemon has ended the stream.</summary>
    public static Diagnostic Ended { get; } = new(ConnectionCodes.BrokenOff, "The daemon has ended the stream.", "This page asks again by itself.");

    /// <summary>What a call failed with, in the daemon's own words when they are the daemon's.</summary>
    public static Diagnostic Of(RpcException failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        return (failure.Reasons(), failure.StatusCode) switch
        {
            _ when failure is StepUnknownException =>
                new Diagnostic(ConnectionCodes.StepUnknown, "The daemon answered neither the step nor the question what became of it.", "Look at what is on record before you take it again."),
            ([var only], _) => only.Read(),
            // Several: the first gives the code.
            ([var first, ..] and var all, _) => Together(first.Read(), all.Skip(1)),
            (_, StatusCode.DeadlineExceeded or StatusCode.Cancelled) => Silent,
            (_, StatusCode.Unknown) when failure.Status.Detail.StartsWith("Exception was thrown by handler", StringComparison.Ordinal) =>
                new Diagnostic(ConnectionCodes.BrokenOff, "The daemon broke the call off: something went wrong inside it.", "See the daemon's log, and try again."),
            // A browser tells no more of a refused connection than that it failed.
            (_, StatusCode.Unavailable or StatusCode.Internal or StatusCode.Unknown) =>
                new Diagnostic(ConnectionCodes.NoAnswer, "The daemon does not answer.", "Start the daemon. This page asks again by itself."),
            _ => new Diagnostic(ConnectionCodes.BrokenOff, $"The daemon broke the call off ({failure.StatusCode}).", "See the daemon's log."),
        };
    }

    private static Diagnostic Together(Diagnostic first, IEnumerable<Api.V1.Diagnostic> others) =>
        new(first.Code, Sentence.Join(" ", [first.Message, first.Remedy, .. others.Select(o => o.Read().Whole)]));
}
