using Grpc.Core;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc.Leans;

/// <summary>The zeros of the pads' inclinometers over gRPC, for reading.</summary>
internal sealed class LeanZerosService(LeanMapping mapping) : Wire.LeanZeros.LeanZerosBase
{
    public override Task<Wire.ListLeanZerosResponse> ListLeanZeros(Wire.ListLeanZerosRequest request, ServerCallContext context) => Task.FromResult(mapping.All());
}
