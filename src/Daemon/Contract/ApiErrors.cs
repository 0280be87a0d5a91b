using Google.Rpc;
using Grpc.Core;
using ScaleLink.Daemon.Journal;
using Code = ScaleLink.Measure.Diagnostics.Code;
using GrpcCode = Google.Rpc.Code;

namespace ScaleLink.Daemon.Contract;

/// <summary>Rich errors: a stable code as the reason, and what to do next.</summary>
internal static class ApiErrors
{
    private const string Domain = "scalelink";

    public static RpcException NotYet() =>
        Make(GrpcCode.Unavailable, ServiceCodes.NoReadingYet, "The daemon has only just started: no reading yet.", "Ask again in a second.");

    public static RpcException UnderWay() =>
        Make(GrpcCode.Unavailable, ConnectionCodes.StepUnderWay, "The step is still under way.", "Wait, then look at what is on record: a slow disk takes its time.");

    public static RpcException CannotWrite(string folder, string why) =>
        Make(GrpcCode.FailedPrecondition, ServiceCodes.RecordingUnwritable, $"No link recording can be written to {folder}: {why}", "Free space there, or name another folder in recorder.path.");

    public static RpcException BadRequest(Code code, string field, Sentence message, Sentence remedy)
    {
        var status = Describe(GrpcCode.InvalidArgument, new(code, message, remedy));
        status.Details.Add(Google.Protobuf.WellKnownTypes.Any.Pack(new BadRequest
        {
            FieldViolations = { new BadRequest.Types.FieldViolation { Field = field, Description = remedy } },
        }));
        return status.ToRpcException();
    }

    /// <summary>What cannot be done on this input: every reason at once, the first one as the error's own code.</summary>
    public static RpcException Unusable(IReadOnlyList<Diagnostic> reasons)
    {
        var status = Describe(GrpcCode.InvalidArgument, reasons[0]);
        status.Details.AddRange(reasons.Skip(1).Select(Reason));
        var all = new BadRequest();
        all.FieldViolations.AddRange(reasons.Select(r => new BadRequest.Types.FieldViolation { Field = r.Where, Description = r.ToString() }));
        status.Details.Add(Google.Protobuf.WellKnownTypes.Any.Pack(all));
        return status.ToRpcException();
    }

    /// <summary>Right in itself, but not as things stand.</summary>
    public static RpcException NotNow(Code code, Sentence message, Sentence remedy) => Make(GrpcCode.FailedPrecondition, code, message, remedy);

    /// <summary>More than one caller gets.</summary>
    public static RpcException TooMuch(Code code, Sentence message, Sentence remedy) => Make(GrpcCode.ResourceExhausted, code, message, remedy);

    /// <summary>No such thing.</summary>
    public static RpcException NotFound(Code code, Sentence message, Sentence remedy) => Make(GrpcCode.NotFound, code, message, remedy);

    /// <summary>The error that a refusal becomes: of a step, of the arithmetic, of the input. Nothing for any other failure.</summary>
    public static RpcException? Of(Exception failure) => failure switch
    {
        StepRefusedException step => Refused(step.Diagnostics),
        RefusedException refused => Refused(refused.Diagnostic),
        DiagnosticException input => Unusable(input.Diagnostics),
        _ => null,
    };

    /// <summary>The name that goes into the ledger, cleaned.</summary>
    public static string Who(string who)
    {
        var clean = PlainText.Clean(who, 64);
        return clean.Length > 0 ? clean : throw BadRequest(ServiceCodes.NameMissing, "who", "This goes on record and needs a name.", "Enter a name.");
    }

    /// <summary>Refused as things stand; with several reasons the first gives the code.</summary>
    public static RpcException Refused(params IReadOnlyList<Diagnostic> refusals)
    {
        var status = Describe(GrpcCode.FailedPrecondition, refusals[0]);
        foreach (var other in refusals.Skip(1))
        {
            status.Message += $" {other}";
            status.Details.AddRange([Google.Protobuf.WellKnownTypes.Any.Pack(Info(other)), Reason(other)]);
        }

        return status.ToRpcException();
    }

    private static RpcException Make(GrpcCode status, Code code, Sentence message, Sentence remedy) => Describe(status, new(code, message, remedy)).ToRpcException();

    private static Google.Rpc.Status Describe(GrpcCode status, Diagnostic diagnostic) => new()
    {
        Code = (int)status,
        Message = diagnostic.ToString(),
        Details = { Google.Protobuf.WellKnownTypes.Any.Pack(Info(diagnostic)), Reason(diagnostic) },
    };

    // With its arguments apart, for who shows it in other units.
    private static Google.Protobuf.WellKnownTypes.Any Reason(Diagnostic diagnostic) => Google.Protobuf.WellKnownTypes.Any.Pack(diagnostic.ToWire());

    private static ErrorInfo Info(Diagnostic diagnostic) => new()
    {
        Domain = Domain,
        Reason = diagnostic.Code.Text,
        Metadata = { ["message"] = diagnostic.Message, ["remedy"] = diagnostic.Remedy },
    };
}
