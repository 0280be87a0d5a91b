using Google.Rpc;
using Grpc.Core;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Rich errors: a stable code as the reason, and what to do next.</summary>
internal static class ApiErrors
{
    private const string Domain = "scalelink";

    public static RpcException NotYet() =>
        Make(Code.Unavailable, "SL-410", "The daemon has only just started: no reading yet.", "Ask again in a second.");

    public static RpcException CannotWrite(string folder, string why) =>
        Make(Code.FailedPrecondition, "SL-441", $"No capture can be written to {folder}: {why}", "Free space there, or name another folder in recorder.path.");

    public static RpcException BadRequest(string code, string field, string message, string mend)
    {
        var status = Describe(Code.InvalidArgument, code, message, mend);
        status.Details.Add(Google.Protobuf.WellKnownTypes.Any.Pack(new BadRequest
        {
            FieldViolations = { new BadRequest.Types.FieldViolation { Field = field, Description = mend } },
        }));
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
