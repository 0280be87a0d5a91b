using Google.Rpc;
using Grpc.Core;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Rich errors: a stable code as the reason, and what to do next.</summary>
internal static class ApiErrors
{
    private const string Domain = "scalelink";

    public static RpcException NotYet() =>
        Make(Code.Unavailable, "SL-410", "The daemon has only just started: no reading yet.", "Ask again in a second.");

    public static RpcException BadRequest(string code, string field, string message, string mend)
    {
        var status = Describe(Code.InvalidArgument, code, message, mend);
        status.Details.Add(Google.Protobuf.WellKnownTypes.Any.Pack(new BadRequest
        {
            FieldViolations = { new BadRequest.Types.FieldViolation { Field = field, Description = mend } },
        }));
        return status.ToRpcException();
    }

    /// <summary>Refused as things stand; with several reasons the first gives the code.</summary>
    public static RpcException Refused(params IReadOnlyList<Refusal> refusals)
    {
        var first = refusals[0];
        var status = Describe(Code.FailedPrecondition, first.Code, $"{first.Message}.", first.Mend);
        foreach (var other in refusals.Skip(1))
        {
            status.Message += $" {other.Code}: {other.Message}. {other.Mend}";
            status.Details.Add(Google.Protobuf.WellKnownTypes.Any.Pack(new ErrorInfo { Domain = Domain, Reason = other.Code, Metadata = { ["mend"] = other.Mend } }));
        }

        return status.ToRpcException();
    }

    private static RpcException Make(Code status, string code, string message, string mend) => Describe(status, code, message, mend).ToRpcException();

    private static Google.Rpc.Status Describe(Code status, string code, string message, string mend) => new()
    {
        Code = (int)status,
        Message = $"{code}: {message} {mend}",
        Details =
        {
            Google.Protobuf.WellKnownTypes.Any.Pack(new ErrorInfo { Domain = Domain, Reason = code, Metadata = { ["mend"] = mend } }),
        },
    };
}
