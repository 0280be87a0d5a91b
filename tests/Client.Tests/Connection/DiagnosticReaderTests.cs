using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;
using ScaleLink.Client.Connection;
using Code = ScaleLink.Measure.Diagnostics.Code;

namespace Client.Tests.Connection;

public class DiagnosticReaderTests
{
    [Fact]
    public void The_daemons_own_code_and_remedy_are_passed_on_once()
    {
        var status = new Google.Rpc.Status { Code = (int)Google.Rpc.Code.InvalidArgument, Message = "A zero needs a name beside it. Say who takes it. (SL-412)" };
        status.Details.Add(Any.Pack(new ErrorInfo { Domain = "scalelink", Reason = "SL-412", Metadata = { ["message"] = "A zero needs a name beside it.", ["remedy"] = "Say who takes it." } }));
        Assert.Equal(new Diagnostic(Code.Read("SL-412"), "A zero needs a name beside it.", "Say who takes it."), DiagnosticReader.Read(status.ToRpcException(), "http://x"));
    }

    [Fact]
    public void What_a_stranger_says_is_cleaned_before_it_is_shown()
    {
        var failure = new RpcException(new Grpc.Core.Status(StatusCode.Unknown, "\e[2Jgone\u202e\n" + new string('x', 900)));
        var trouble = DiagnosticReader.Read(failure, "http://x");
        Assert.Equal("SL-423", trouble.Code);
        Assert.DoesNotContain('\e', trouble.Message.ToString());
        Assert.DoesNotContain('\u202e', trouble.Message.ToString());
        Assert.InRange(trouble.Message.ToString().Length, 50, 360);
    }

    [Theory]
    [InlineData(StatusCode.Unavailable, "SL-420")]
    [InlineData(StatusCode.DeadlineExceeded, "SL-424")]
    [InlineData(StatusCode.Unimplemented, "SL-422")]
    [InlineData(StatusCode.ResourceExhausted, "SL-423")]
    public void Every_failure_has_a_stable_code_and_a_remedy(StatusCode status, string code)
    {
        var trouble = DiagnosticReader.Read(new RpcException(new Grpc.Core.Status(status, "")), "http://x");
        Assert.Equal(code, trouble.Code);
        Assert.NotEmpty(trouble.Remedy.ToString());
    }
}
