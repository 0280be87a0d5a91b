using Grpc.Core;
using Shared.Rig;

namespace Bay.Tests.Work;

/// <summary>Calls that have to be refused.</summary>
internal sealed class Calls(BayRig bay)
{
    private const int CodeLength = 6;

    /// <summary>The code that a call is refused with, by the daemon's own judgement and not by a failure inside it; the daemon outlives it.</summary>
    public string Code(Action<DaemonProcess> call)
    {
        var failure = Assert.Throws<RpcException>(() => call(bay.Daemon));
        Assert.True(failure.StatusCode is StatusCode.InvalidArgument or StatusCode.FailedPrecondition or StatusCode.NotFound, failure.Status.ToString());
        Assert.False(bay.Daemon.Process.HasExited);
        return failure.Status.Detail[..CodeLength];
    }
}
