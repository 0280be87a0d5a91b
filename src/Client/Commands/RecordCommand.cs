using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Json;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Commands;

/// <summary><c>scalelink record</c>: what the links have carried, as captures.</summary>
internal static class RecordCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var corners = new Argument<string[]>("corner") { Description = "Links of these pads: LF, RF, LR, RR. None: all.", Arity = new ArgumentArity(0, 4) };
        corners.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var note = new Option<string?>("--note") { Description = "A remark that is written into the captures.", HelpName = "TEXT" };
        var seconds = TimeLimit.Option("How far back, 1 to 600. Otherwise as far as the daemon remembers.");
        var folder = new Option<string?>("--out") { Description = "Copies the captures into this folder; they stay with the daemon too.", HelpName = "FOLDER" };
        var list = new Option<bool>("--list") { Description = "Only lists the captures that the daemon keeps; with --out copies them." };
        var command = new Command("record", "Writes the bytes of the last minute of each link to files, for whoever has to find a fault.") { corners, note, seconds, folder, list };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = new DaemonConnection(parsed.GetValue(common.Daemon)!, shell.Time);
            var captures = parsed.GetValue(list) ? await Kept(daemon, stop) : await Record(daemon, Request(parsed.GetValue(corners)!, parsed.GetValue(note), parsed.GetValue(seconds)), stop);
            var copies = parsed.GetValue(folder) is { } place ? await Copy(daemon, captures, place, stop) : null;
            if (parsed.GetValue(common.Json))
                shell.WriteJson(CapturesJson.Of(captures, copies), RecordTexts.Default.CapturesJson);
            else
                Write(captures, copies, shell);
            return captures.Count > 0 || parsed.GetValue(list) ? ExitCodes.Done : ExitCodes.NotAchieved;
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

    private static async Task<IReadOnlyList<CaptureFile>> Record(DaemonConnection daemon, RecordLinksRequest request, CancellationToken stop) =>
        (await daemon.Ask(options => daemon.RecorderControl.RecordLinksAsync(request, options), stop)).Captures;

    private static async Task<IReadOnlyList<CaptureFile>> Kept(DaemonConnection daemon, CancellationToken stop) =>
        (await daemon.Ask(options => daemon.Recorder.ListCapturesAsync(new ListCapturesRequest(), options), stop)).Captures;

    private static async Task<IReadOnlyList<string>> Copy(DaemonConnection daemon, IReadOnlyList<CaptureFile> captures, string folder, CancellationToken stop)
    {
        var copies = new List<string>();
        try
        {
            Directory.CreateDirectory(folder);
            foreach (var capture in captures)
            {
                var got = await daemon.Ask(options => daemon.Recorder.GetCaptureAsync(new GetCaptureRequest { Name = capture.Name }, options), stop);
                // The name comes from the daemon: it may not lead out of the folder.
                var path = Path.Combine(folder, Path.GetFileName(PeerText.Clean(capture.Name, 120)));
                await File.WriteAllTextAsync(path, got.Text, stop);
                copies.Add(path);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClientException(new Diagnostic(ClientCodes.FileUnwritable, $"Captures cannot be written to {folder}: {e.Message}", "Name another folder with --out."), e);
        }

        return copies;
    }

    private static void Write(IReadOnlyList<CaptureFile> captures, IReadOnlyList<string>? copies, Shell shell)
    {
        if (captures.Count == 0)
            shell.WriteLine("No captures: no link has carried bytes, or none has been recorded.");
        for (var k = 0; k < captures.Count; k++)
            shell.WriteLine($"{captures[k].Written?.ToDateTime():yyyy-MM-ddTHH:mm:ssZ}  {captures[k].Bytes,8} bytes  {copies?[k] ?? PeerText.Clean(captures[k].Name, 120)}");
    }
}
