using Grpc.Core;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Zeros;

/// <summary>What changes the pads, over gRPC.</summary>
internal sealed class PadControlService(LiveBay bay, ZeroTaking taking, ApiMapping mapping) : Wire.PadControl.PadControlBase
{
    private const int LongestName = 64;
    private const int LongestReason = 200;

    public override Task<Wire.ZeroPadsResponse> ZeroPads(Wire.ZeroPadsRequest request, ServerCallContext context)
    {
        var who = PlainText.Clean(request.Who, LongestName);
        if (who.Length == 0)
            throw ApiErrors.BadRequest(ServiceCodes.NameMissing, "who", "A zero goes on record and needs a name.", "Enter a name.");
        var chosen = bay.Pads.Where(p => request.Corners.Count == 0 || request.Corners.Contains(p.Corner.ToWire())).ToList();
        if (chosen.Count == 0)
            throw ApiErrors.BadRequest(ServiceCodes.NoPadThere, "corners", "None of these corners has a pad here.", "Ask Pads.ListPads which corners there are.");
        var response = new Wire.ZeroPadsResponse();
        var because = PlainText.Clean(request.Because, LongestReason);
        response.Results.AddRange(chosen.Select(pad => Zero(pad, who, because)));
        return Task.FromResult(response);
    }

    private Wire.ZeroResult Zero(PadChannel pad, string who, string because)
    {
        var result = new Wire.ZeroResult { Corner = pad.Corner.ToWire() };
        var (zero, refused) = taking.Take(pad, who, because);
        if (zero is not null)
            result.Zero = PadMapping.Zero(zero);
        else
            result.Refused = mapping.Told(refused!);
        return result;
    }
}
