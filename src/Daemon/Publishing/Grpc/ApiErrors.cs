using Google.Rpc;
using Grpc.Core;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Weighing.Calibration;
using ScaleLink.Weighing.Cars;

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

    /// <summary>What cannot be done on this input: every reason at once, the first one as the error's own code.</summary>
    public static RpcException Refused(IReadOnlyList<Finding> findings)
    {
        var first = findings[0];
        var status = Describe(Code.InvalidArgument, first.Code, first.Message, first.Mend);
        var all = new BadRequest();
        all.FieldViolations.AddRange(findings.Select(f => new BadRequest.Types.FieldViolation { Field = f.Place, Description = f.ToString() }));
        status.Details.Add(Google.Protobuf.WellKnownTypes.Any.Pack(all));
        return status.ToRpcException();
    }

    /// <summary>Right in itself, but not as things stand.</summary>
    public static RpcException NotNow(string code, string message, string mend) => Make(Code.FailedPrecondition, code, message, mend);

    /// <summary>No such thing.</summary>
    public static RpcException NotFound(string code, string message, string mend) => Make(Code.NotFound, code, message, mend);

    /// <summary>The error that a refusal becomes: of a step, of the arithmetic, of the input. Nothing for any other failure.</summary>
    public static RpcException? Of(Exception failure) => failure switch
    {
        StepRefusedException step => NotNow(step.Finding.Code, string.Join(' ', step.Findings.Select(f => f.Message)), step.Finding.Mend),
        RefusedException refused => Refused(refused.Refusal),
        FindingException input => Refused(input.Findings),
        _ => null,
    };

    /// <summary>The name that goes into the ledger, cleaned.</summary>
    public static string Who(string who)
    {
        var clean = PeerText.Clean(who, 64);
        return clean.Length > 0 ? clean : throw BadRequest("SL-412", "who", "This goes on record and needs a name beside it.", "Say who does it.");
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
