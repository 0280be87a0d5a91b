using System.Text;
using ScaleLink.Api.V1;
using Shared;
using Shared.Rig;

namespace Bay.Tests.Replay;

/// <summary>Records the scenes from the simulator with the daemon's own recorder. SCALELINK_RECORD=1, or a name, writes them anew; their goldens have to be approved anew too.</summary>
[Collection(Alone.Name)]
public class SceneRecorder
{
    // No noise in the loads: a reading then is the same whichever samples fall into its block.
    private const string Imperfections = "clock-offset,clock-drift,latency-batches,tilt-noise,tilt-offset,thermometer-noise,quantisation";
    private const int Rate = 20;
    private const double EmptySeconds = 2.5;

    public static TheoryData<string> Names => [Scene.Empty, Scene.EmptyText, .. Scene.All.Keys];

    public static string Folder(string scene) => RepositoryRoot.File("tests", "Replay", scene);

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_scene_is_recorded(string name)
    {
        if (Environment.GetEnvironmentVariable("SCALELINK_RECORD") is { } wanted && (wanted == "1" || wanted == name))
            Record(name);
        Assert.NotEmpty(Directory.GetFiles(Folder(name), "*.recording"));
        Assert.True(File.Exists(Path.Combine(Folder(name), "pads.toml")));
    }

    private static void Record(string name)
    {
        var scene = Scene.All.GetValueOrDefault(name);
        using var bay = new BayRig(scene is null ? "none" : Imperfections, Rate, seed: 5, speak: scene?.Speak ?? (name == Scene.EmptyText ? "text" : "pad-frames"), tilt: scene?.Tilt ?? "own", replyMs: PadBlocks.RecordedReplyMs);
        if (scene is null)
        {
            bay.WaitLive();
            Pass(EmptySeconds);
        }
        else
        {
            bay.PutCarOn();
            bay.Settled();
            // A link recording that begins with the opening of its ports: the pads say who they are.
            bay.RestartDaemon();
            bay.WaitLive();
            Pass(scene.Seconds / 3);
            Do(bay, scene.Begin);
            Pass(scene.Seconds / 3);
            Do(bay, scene.End);
            Pass(scene.Seconds / 3);
        }

        Write(bay, name);
    }

    private static void Write(BayRig bay, string name)
    {
        if (Directory.Exists(Folder(name)))
            Directory.Delete(Folder(name), recursive: true);
        Directory.CreateDirectory(Folder(name));
        var control = new RecorderControl.RecorderControlClient(bay.Daemon.Channel);
        var recorder = new Recorder.RecorderClient(bay.Daemon.Channel);
        foreach (var file in control.RecordLinks(new RecordLinksRequest { Note = $"scene {name}" }).Recordings)
        {
            var text = recorder.GetLinkRecording(new GetLinkRecordingRequest { Name = file.Name }).Text;
            var port = text.Split('\n').Single(l => l.StartsWith("link: ", StringComparison.Ordinal)).Split('/')[^1];
            File.WriteAllText(Path.Combine(Folder(name), $"{port}.recording"), text);
        }

        var pads = new StringBuilder();
        foreach (var corner in Simulator.Corners)
            pads.AppendLine(OfItsOwn(PadBlocks.Of(bay.Simulator.Ready, corner)));
        var ports = Path.GetDirectoryName(bay.Simulator.Ready["ports"]!["LF"]!.GetValue<string>())!;
        File.WriteAllText(Path.Combine(Folder(name), "pads.toml"), pads.Replace(ports, ReplayBay.PortsMark).ToString());
    }

    // A pad of one number has another zero than the same one with a number for each cell: they are two pads to the daemon.
    private static string OfItsOwn(string block) => block.Contains("text-lines", StringComparison.Ordinal) ? block.Replace("SLP-", "TXT-") : block;

    private static void Do(BayRig bay, string[] orders)
    {
        foreach (var order in orders)
            bay.Simulator.Do(order);
    }

    private static void Pass(double seconds) => Thread.Sleep(TimeSpan.FromSeconds(seconds));
}
