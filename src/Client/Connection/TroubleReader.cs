using Google.Rpc;
using Grpc.Core;
using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;

namespace ScaleLink.Client.Connection;

/// <summary>Finds the stable code and the mend in whatever a call failed with.</summary>
internal static class TroubleReader
{
    private const int LongestMessage = 300;
    private const int LongestCode = 16;

    public static Trouble Read(RpcException failure, string daemon)
    {
        if (Told(failure) is { } told)
            return told;
        return failure.StatusCode switch
        {
            StatusCode.Unavailable => Away(daemon, failure.Status.DebugException),
            StatusCode.DeadlineExceeded => new Trouble("SL-424", $"The daemon at {daemon} does not answer in time.", "See whether its machine is overloaded or asleep."),
            StatusCode.Unimplemented or StatusCode.Internal when failure.Status.DebugException is not null || failure.StatusCode == StatusCode.Unimplemented
                => new Trouble("SL-422", $"What answers at {daemon} is not the daemon's gRPC port.", "Give the gRPC port with --daemon; the page's port is another one."),
            _ => new Trouble("SL-423", $"The daemon at {daemon} broke the call off: {PeerText.Clean(failure.Status.Detail, LongestMessage)}", "See the daemon's log."),
        };
    }

    /// <summary>A fault in an answer, cleaned.</summary>
    public static Trouble Read(Fault fault) =>
        new(PeerText.Clean(fault.Code, LongestCode), PeerText.Clean(fault.Message, LongestMessage), PeerText.Clean(fault.Mend, LongestMessage));

    private static Trouble Away(string daemon, Exception? cause) => cause is HttpRequestException { HttpRequestError: HttpRequestError.HttpProtocolError or HttpRequestError.InvalidResponse or HttpRequestError.ResponseEnded }
        ? new Trouble("SL-422", $"What answers at {daemon} is not the daemon's gRPC port.", "Give the gRPC port with --daemon; the page's port is another one.")
        : new Trouble("SL-420", $"No daemon answers at {daemon}.", "Start the daemon, or give its address with --daemon.");

    // The daemon's own words, when the failure is the daemon's and not the network's.
    private static Trouble? Told(RpcException failure)
    {
        var status = failure.GetRpcStatus();
        if (status?.GetDetail<ErrorInfo>() is not { } info)
            return null;
        var code = PeerText.Clean(info.Reason, LongestCode);
        var mend = PeerText.Clean(info.Metadata.TryGetValue("mend", out var text) ? text : "", LongestMessage);
        var message = PeerText.Clean(status.Message, LongestMessage);
        return new Trouble(code, Without(message, code, mend), mend);
    }

    // The status message repeats code and mend for readers that know no details.
    private static string Without(string message, string code, string mend)
    {
        if (message.StartsWith($"{code}: ", StringComparison.Ordinal))
            message = message[(code.Length + 2)..];
        return mend.Length > 0 && message.EndsWith(mend, StringComparison.Ordinal) ? message[..^mend.Length].TrimEnd() : message;
    }
}
