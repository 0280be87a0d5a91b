using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Recording;

/// <summary><c>scalelink record</c>: what the links have carried, as link recordings.</summary>
internal static class RecordCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var corners = new Argument<string[]>("corner") { Description = "Links of these pads: LF, RF, LR, RR. None: all.", Arity = new ArgumentArity(0, 4) };
        corners.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var note = new Option<string?>("--note") { Description = "A remark that is written into the link recordings.", HelpName = "TEXT" };
        var seconds = TimeLimit.Option("How far back, 1 to 600. Otherwise as far as the daemon remembers.");
        var folder = new Option<string?>("--out") { Description = "Copies the link recordings into this folder; they stay with the daemon too.", HelpName = "FOLDER" };
        var list = new Option<bool>("--list") { Description = "Only lists the link recordings that the daemon keeps; with --out copies them." };
        var command = new Command("record", "Writes the bytes of the last minute of each link to files, for whoever has to find a fault.") { corners, note, seconds, folder, list };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var recordings = parsed.GetValue(list) ? await Kept(daemon, stop) : await Record(daemon, Request(parsed.GetValue(corners)!, parsed.GetValue(note), parsed.GetValue(seconds)), stop);
            var copies = parsed.GetValue(folder) is { } place ? await Copy(daemon, recordings, place, stop) : null;
            if (parsed.GetValue(common.Json))
                shell.WriteJson(RecordingsJson.Of(recordings, copies), RecordTexts.Default.RecordingsJson);
            else
                Write(recordings, copies, shell);
            return recordings.Count > 0 || parsed.GetValue(list) ? ExitCodes.Done : ExitCodes.NotAchieved;
        });
        return command;
    }

    private static RecordLinksRequest Request(string[] corners, string? note, double? seconds)
    {
        var request = new RecordLinksRequest { Note = note ?? "" };
        request.Corners.AddRange(corners.Select(WireCorners.Named));
        if (seconds is { } back)
            request.Seconds = back;
        return request;
    }

    private static async Task<IReadOnlyList<RecordingFile>> Record(DaemonConnection daemon, RecordLinksRequest request, CancellationToken stop) =>
        (await daemon.Ask(options => daemon.RecorderControl.RecordLinksAsync(request, options), stop)).Recordings;

    private static async Task<IReadOnlyList<RecordingFile>> Kept(DaemonConnection daemon, CancellationToken stop) =>
        (await daemon.Ask(options => daemon.Recorder.ListLinkRecordingsAsync(new ListLinkRecordingsRequest(), options), stop)).Recordings;

    private static async Task<IReadOnlyList<string>> Copy(DaemonConnection daemon, IReadOnlyList<RecordingFile> recordings, string folder, CancellationToken stop)
    {
        var copies = new List<string>();
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var recording in recordings)
            {
                var got = await daemon.Ask(options => daemon.Recorder.GetLinkRecordingAsync(new GetLinkRecordingRequest { Name = recording.Name }, options), stop);
                // The name comes from the daemon: it may not lead out of the folder.
                var path = Path.Combine(folder, Path.GetFileName(PeerText.Clean(recording.Name, 120)));
                await File.WriteAllTextAsync(path, got.Text, stop);
                copies.Add(path);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClientException(new Diagnostic(ClientCodes.FileUnwritable, $"Link recordings cannot be written to {folder}: {e.Message}", "Name another folder with --out."), e);
        }

        return copies;
    }

    private static void Write(IReadOnlyList<RecordingFile> recordings, IReadOnlyList<string>? copies, Shell shell)
    {
        if (recordings.Count == 0)
            shell.WriteLine("No link recordings: no link has carried bytes, or none has been recorded.");
        for (var k = 0; k < recordings.Count; k++)
            shell.WriteLine($"{recordings[k].Written.LocalSecond()}  {recordings[k].Bytes,8} bytes  {copies?[k] ?? PeerText.Clean(recordings[k].Name, 120)}");
    }
}
