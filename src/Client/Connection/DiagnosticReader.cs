using Google.Rpc;
using Grpc.Core;
using ScaleLink.Client.Runtime;
using Code = ScaleLink.Measure.Diagnostics.Code;

namespace ScaleLink.Client.Connection;

/// <summary>Finds the stable code and the remedy in whatever a call failed with.</summary>
internal static class DiagnosticReader
{
    private const int LongestMessage = 300;
    private const int LongestCode = 16;

    public static Diagnostic Read(RpcException failure, string daemon)
    {
        if (Told(failure) is { } told)
            return told;
        if (failure is StepUnknownException)
            return new Diagnostic(ConnectionCodes.StepUnknown, $"The daemon at {daemon} answered neither the step nor the question what became of it.", "Look at what is on record before you take it again.");
        return failure.StatusCode switch
        {
            StatusCode.Unavailable => Away(daemon, failure.Status.DebugException),
            StatusCode.DeadlineExceeded => new Diagnostic(ConnectionCodes.TooSlow, $"The daemon at {daemon} does not answer in time.", "See whether its machine is overloaded or asleep."),
            StatusCode.Unimplemented or StatusCode.Internal when failure.Status.DebugException is not null || failure.StatusCode == StatusCode.Unimplemented
                => new Diagnostic(ConnectionCodes.NotTheDaemon, $"What answers at {daemon} is not the daemon's gRPC port.", "Give the gRPC port with --daemon; the page's port is another one."),
            _ => new Diagnostic(ConnectionCodes.BrokenOff, $"The daemon at {daemon} broke the call off: {PeerText.Clean(failure.Status.Detail, LongestMessage)}", "See the daemon's log."),
        };
    }

    /// <summary>What stands in an answer, cleaned.</summary>
    public static Diagnostic Read(Api.V1.Diagnostic told) =>
        new(Code.Read(PeerText.Clean(told.Code, LongestCode)), told.Read().Message.Cleaned(LongestMessage), told.Read().Remedy.Cleaned(LongestMessage));

    private static Diagnostic Away(string daemon, Exception? cause) => cause is HttpRequestException { HttpRequestError: HttpRequestError.HttpProtocolError or HttpRequestError.InvalidResponse or HttpRequestError.ResponseEnded }
        ? new Diagnostic(ConnectionCodes.NotTheDaemon, $"What answers at {daemon} is not the daemon's gRPC port.", "Give the gRPC port with --daemon; the page's port is another one.")
        : new Diagnostic(ConnectionCodes.NoAnswer, $"No daemon answers at {daemon}.", "Start the daemon, or give its address with --daemon.");

    // The daemon's own words, when the failure is the daemon's and not the network's.
    private static Diagnostic? Told(RpcException failure)
    {
        // One reason comes with its loads and lengths; several stand together in the words.
        if (failure.Reasons() is [var only])
            return Read(only);
        var status = failure.GetRpcStatus();
        if (status?.GetDetail<ErrorInfo>() is not { } info)
            return null;
        string Field(string name, string otherwise) => PeerText.Clean(info.Metadata.GetValueOrDefault(name, otherwise), LongestMessage);
        return new(Code.Read(PeerText.Clean(info.Reason, LongestCode)), Field("message", status.Message), Field("remedy", ""));
    }
}
