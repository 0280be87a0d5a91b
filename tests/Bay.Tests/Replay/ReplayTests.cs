using Shared;
using Xunit.Sdk;

namespace Bay.Tests.Replay;

/// <summary>
/// Recorded bytes through real pseudo-terminals into the real daemon: what it publishes on gRPC and MQTT is what was approved. A missing golden
/// fails. No published source: link recordings were made from the simulator, goldens were read through before they were approved.
/// </summary>
[Collection(Alone.Name)]
public class ReplayTests(Playback playback) : IClassFixture<Playback>
{
    public static TheoryData<string> Names => [.. Scene.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_recorded_scene_is_published_as_approved(string scene)
    {
        try
        {
            Compare(scene, playback.Of(scene));
        }
        catch (XunitException)
        {
            // What a busy machine has not read yet is lost when a port hangs up: played once more, and no other beside it.
            Compare(scene, playback.Play(scene));
        }
    }

    private static void Compare(string scene, string published) => Approved.Matches(published, "tests", "Replay", scene, "published.approved.txt");
}
