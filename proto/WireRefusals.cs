using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Grpc.Core;

namespace ScaleLink.Api;

/// <summary>
/// What the daemon says about a call that it refused. It lies among the details of the status (google.rpc.Status), which are read here field by
/// field: the page has no use for the rest of that library.
/// </summary>
public static class WireRefusals
{
    private const string StatusDetails = "grpc-status-details-bin";
    private static readonly uint DetailsTag = WireFormat.MakeTag(3, WireFormat.WireType.LengthDelimited);

    /// <summary>Every reason, the one that gives the code first. Empty: the failure is not the daemon's own.</summary>
    public static IReadOnlyList<V1.Diagnostic> Reasons(this RpcException failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        try
        {
            return failure.Trailers.GetValueBytes(StatusDetails) is { } status ? [.. Details(status).Where(d => d.Is(V1.Diagnostic.Descriptor)).Select(d => d.Unpack<V1.Diagnostic>())] : [];
        }
        catch (InvalidProtocolBufferException)
        {
            return [];
        }
    }

    private static List<Any> Details(byte[] status)
    {
        List<Any> details = [];
        var input = new CodedInputStream(status);
        while (input.ReadTag() is var tag and not 0)
            if (tag == DetailsTag)
            {
                var detail = new Any();
                input.ReadMessage(detail);
                details.Add(detail);
            }
            else
            {
                input.SkipLastField();
            }

        return details;
    }
}
