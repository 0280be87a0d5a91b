using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using ScaleLink.Daemon.Recording;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>What the links have carried, over gRPC.</summary>
internal sealed class RecorderService(FlightRecorder recorder, CaptureFolder folder) : Wire.Recorder.RecorderBase
{
    public override Task<Wire.ListCapturesResponse> ListCaptures(Wire.ListCapturesRequest request, ServerCallContext context)
    {
        var list = new Wire.ListCapturesResponse { Folder = folder.Path, TapeSeconds = recorder.Span.TotalSeconds };
        list.Links.AddRange(recorder.Links.Select(Link));
        list.Captures.AddRange(folder.List().Select(File));
        return Task.FromResult(list);
    }

    public override Task<Wire.Capture> GetCapture(Wire.GetCaptureRequest request, ServerCallContext context) =>
        Task.FromResult(folder.Read(request.Name) is { } text
            ? new Wire.Capture { Name = request.Name, Text = text }
            : throw ApiErrors.BadRequest(ServiceCodes.RecordingNotFound, "name", "There is no capture of that name.", "Ask Recorder.ListCaptures for the names; old ones are deleted."));

    public static Wire.CaptureFile File(CaptureFile file) =>
        new() { Name = file.Name, Written = Timestamp.FromDateTimeOffset(file.WrittenAt), Bytes = (ulong)file.Bytes };

    private static Wire.RecordedLink Link(RecordedLink link)
    {
        var result = new Wire.RecordedLink { Link = link.Address.Name, Protocol = link.Protocol };
        result.Corners.AddRange(link.Sources.Select(s => s.Pad.Corner.ToWire()).Distinct());
        return result;
    }
}
