using Shared;

namespace Bay.Tests.Replay;

/// <summary>
/// Recorded bytes through real pseudo-terminals into the real daemon: what it publishes on gRPC and MQTT is what was approved. A missing golden
/// fails. No published source: captures were made from the simulator, goldens were read through before they were approved.
/// </summary>
[Collection(Alone.Name)]
public class ReplayTests(Playback playback) : IClassFixture<Playback>
{
    public static TheoryData<string> Names => [.. Scene.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_recorded_scene_is_published_as_approved(string scene) => Approved.Matches(playback.Of(scene), "tests", "Replay", scene, "published.approved.txt");
}
