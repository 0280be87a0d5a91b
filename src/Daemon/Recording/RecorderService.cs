using Google.Protobuf.WellKnownTypes;
using Grpc.Core;
using ScaleLink.Daemon.Contract;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Recording;

/// <summary>What the links have carried, over gRPC.</summary>
internal sealed class RecorderService(FlightRecorder recorder, RecordingFolder folder) : Wire.Recorder.RecorderBase
{
    public override Task<Wire.ListLinkRecordingsResponse> ListLinkRecordings(Wire.ListLinkRecordingsRequest request, ServerCallContext context)
    {
        var list = new Wire.ListLinkRecordingsResponse { Folder = folder.Path, TapeSeconds = recorder.Span.TotalSeconds };
        list.Links.AddRange(recorder.Links.Select(Link));
        list.Recordings.AddRange(folder.List().Select(File));
        return Task.FromResult(list);
    }

    public override Task<Wire.LinkRecording> GetLinkRecording(Wire.GetLinkRecordingRequest request, ServerCallContext context) =>
        Task.FromResult(folder.Read(request.Name) is { } text
            ? new Wire.LinkRecording { Name = request.Name, Text = text }
            : throw ApiErrors.BadRequest(ServiceCodes.RecordingNotFound, "name", "There is no link recording of that name.", "Ask Recorder.ListLinkRecordings for the names; old ones are deleted."));

    public static Wire.RecordingFile File(RecordingFile file) =>
        new() { Name = file.Name, Written = Timestamp.FromDateTimeOffset(file.WrittenAt), Bytes = (ulong)file.Bytes };

    private static Wire.RecordedLink Link(RecordedLink link)
    {
        var result = new Wire.RecordedLink { Link = link.Address.Name, Protocol = link.Protocol };
        result.Corners.AddRange(link.Sources.Select(s => s.Pad.Corner.ToWire()).Distinct());
        return result;
    }
}
