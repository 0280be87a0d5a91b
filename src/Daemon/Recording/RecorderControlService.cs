using Grpc.Core;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Recording;

/// <summary>Writes link recordings on request, over gRPC.</summary>
internal sealed class RecorderControlService(FlightRecorder recorder, RecordingFolder folder, BayClock clock) : Wire.RecorderControl.RecorderControlBase
{
    private const int LongestNote = 400;
    private const string Reason = "request";

    public override Task<Wire.RecordLinksResponse> RecordLinks(Wire.RecordLinksRequest request, ServerCallContext context)
    {
        if (request.HasSeconds && request.Seconds is not (>= 1 and <= 600))
            throw ApiErrors.BadRequest(ServiceCodes.RecordingTimeNotOffered, "seconds", $"The last {request.Seconds} s cannot be recorded.", "Ask for 1 to 600.");
        var links = recorder.Links.Where(l => request.Corners.Count == 0 || l.Sources.Any(s => request.Corners.Contains(s.Pad.Corner.ToWire()))).ToList();
        if (links.Count == 0)
            throw ApiErrors.BadRequest(ServiceCodes.NoPadThere, "corners", "None of these corners has a pad here.", "Ask Pads.ListPads which corners there are.");
        var note = PlainText.Clean(request.Note, LongestNote);
        var back = request.HasSeconds ? TimeSpan.FromSeconds(request.Seconds) : recorder.Span;
        var response = new Wire.RecordLinksResponse();
        response.Recordings.AddRange(links.Select(l => Record(l, back, note)).OfType<RecordingFile>().Select(RecorderService.File));
        return Task.FromResult(response);
    }

    private RecordingFile? Record(RecordedLink link, TimeSpan back, string note)
    {
        if (recorder.Take(link, back, Reason, note.Length > 0 ? [note] : []) is not { } recording)
            return null;
        try
        {
            return folder.Save(recording, link.ShortName, Reason, clock.ToUtc(clock.NowNs));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw ApiErrors.CannotWrite(folder.Path, e.Message);
        }
    }
}
