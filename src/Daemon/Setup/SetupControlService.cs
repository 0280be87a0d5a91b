using Grpc.Core;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Setup;

/// <summary>What people do to set a bay up, over gRPC.</summary>
internal sealed class SetupControlService(SetupDesk desk, SetupSettings settings, SetupEnd end) : Wire.SetupControl.SetupControlBase
{
    public override Task<Wire.SetupState> SearchDevices(Wire.SearchDevicesRequest request, ServerCallContext context)
    {
        desk.Search([.. request.Ports]);
        return Now();
    }

    public override Task<Wire.SetupState> AwaitCorner(Wire.AwaitCornerRequest request, ServerCallContext context)
    {
        desk.Await(request.Corner.ToMeasure());
        return Now();
    }

    public override Task<Wire.SetupState> PlaceDevice(Wire.PlaceDeviceRequest request, ServerCallContext context)
    {
        desk.Place(request.Device, request.Corner.ToMeasure());
        return Now();
    }

    public override Task<Wire.WriteBayFileResponse> WriteBayFile(Wire.WriteBayFileRequest request, ServerCallContext context)
    {
        var text = desk.Write(request.Bay, request.HasCapacityKg ? request.CapacityKg : null);
        end.Come();
        return Task.FromResult(new Wire.WriteBayFileResponse { BayFile = settings.BayFile, Text = text });
    }

    private Task<Wire.SetupState> Now() => Task.FromResult(SetupMapping.ToWire(desk.Now, settings.BayFile));
}
