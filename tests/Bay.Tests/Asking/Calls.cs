using System.Text.RegularExpressions;
using Grpc.Core;
using Shared.Rig;

namespace Bay.Tests.Asking;

/// <summary>Calls that have to be refused.</summary>
internal sealed partial class Calls(BayRig bay)
{
    /// <summary>The code that a call is refused with, by the daemon's own judgement and not by a failure inside it; the daemon outlives it.</summary>
    public string Code(Action<DaemonProcess> call)
    {
        var failure = Assert.Throws<RpcException>(() => call(bay.Daemon));
        Assert.True(failure.StatusCode is StatusCode.InvalidArgument or StatusCode.FailedPrecondition or StatusCode.NotFound, failure.Status.ToString());
        Assert.False(bay.Daemon.Process.HasExited);
        return In(failure);
    }

    /// <summary>The code of a failed call: it stands at the end of the first sentences.</summary>
    public static string In(RpcException failure) => FirstCode().Match(failure.Status.Detail).Groups[1].Value;

    [GeneratedRegex(@"\((SL-\d{3})\)")]
    private static partial Regex FirstCode();
}
