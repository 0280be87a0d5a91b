using System.Text.RegularExpressions;
using Grpc.Core;

namespace ScaleLink.Board.Connection;

/// <summary>Something that the crew can meet: a code that stays the same, what is wrong, and what to do next.</summary>
public sealed partial record Trouble(string Code, string Message, string Mend = "")
{
    /// <summary>The daemon does not answer although it may be there.</summary>
    public static Trouble Silent { get; } = new("SL-424", "The daemon does not answer in time.", "See whether its machine is overloaded or asleep. This page asks again by itself.");

    /// <summary>Readings come faster than this page can take them.</summary>
    public static Trouble Behind { get; } = new("SL-425", "This device is too slow for the readings.", "The page asks for fewer by itself. Close other pages and programs on it.");

    /// <summary>Nothing has been heard since the page was opened.</summary>
    public static Trouble NotYet { get; } = new("SL-420", "Waiting for the daemon's first reading.");

    /// <summary>The daemon has ended the stream.</summary>
    public static Trouble Ended { get; } = new("SL-423", "The daemon has ended the stream.", "This page asks again by itself.");

    /// <summary>What a call failed with, in the daemon's own words when they are the daemon's.</summary>
    public static Trouble Of(RpcException failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        var told = CodeFirst().Match(failure.Status.Detail);
        return (told.Success, failure.StatusCode) switch
        {
            (true, _) => new Trouble(told.Groups[1].Value, told.Groups[2].Value),
            (_, StatusCode.DeadlineExceeded or StatusCode.Cancelled) => Silent,
            (_, StatusCode.Unknown) when failure.Status.Detail.StartsWith("Exception was thrown by handler", StringComparison.Ordinal) =>
                new Trouble("SL-423", "The daemon broke the call off: something went wrong inside it.", "See the daemon's log, and try again."),
            // A browser tells no more of a refused connection than that it failed.
            (_, StatusCode.Unavailable or StatusCode.Internal or StatusCode.Unknown) =>
                new Trouble("SL-420", "The daemon does not answer.", "Start the daemon. This page asks again by itself."),
            _ => new Trouble("SL-423", $"The daemon broke the call off ({failure.StatusCode}).", "See the daemon's log."),
        };
    }

    [GeneratedRegex(@"^(SL-\d{3}): (.+)$", RegexOptions.Singleline)]
    private static partial Regex CodeFirst();
}
