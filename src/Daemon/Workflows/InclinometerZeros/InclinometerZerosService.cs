using Grpc.Core;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.InclinometerZeros;

/// <summary>The zeros of the pads' inclinometers over gRPC, for reading.</summary>
internal sealed class InclinometerZerosService(InclinometerZeroMapping mapping) : Wire.InclinometerZeros.InclinometerZerosBase
{
    public override Task<Wire.ListInclinometerZerosResponse> ListInclinometerZeros(Wire.ListInclinometerZerosRequest request, ServerCallContext context) => Task.FromResult(mapping.All());
}
