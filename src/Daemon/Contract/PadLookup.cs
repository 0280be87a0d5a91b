using ScaleLink.Daemon.Bay;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Contract;

/// <summary>Finds the pad that a call means.</summary>
internal static class PadLookup
{
    /// <exception cref="global::Grpc.Core.RpcException">SL-413: no pad there.</exception>
    public static PadChannel PadAt(this LiveBay bay, Wire.Corner corner) => bay.Pads.FirstOrDefault(p => p.Corner.ToWire() == corner)
        ?? throw ApiErrors.BadRequest(ServiceCodes.NoPadThere, "corner", "That corner has no pad here.", "Ask Pads.ListPads which corners there are.");
}
