using Grpc.Core;
using Grpc.Core.Interceptors;
using Grpc.Net.Client;
using ScaleLink.Api;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Steps;

/// <summary>
/// The link is lost in the middle of a step: after the daemon was asked, before, and for good. What the terminal says in the end is what stands in the ledger.
/// The project's own requirement.
/// </summary>
[Trait("needs", "bay")]
[Collection(StepsCollection.Name)]
public sealed class LostAnswerTests(StepsBay bay)
{
    // The terminal waits for 5 s before it asks.
    private static readonly TimeSpan OverPatience = TimeSpan.FromSeconds(6);

    [Fact]
    public async Task A_step_whose_answer_was_lost_is_answered_once_the_link_is_back_and_stands_in_the_record_once()
    {
        await using var link = new Relay(bay.Rig.GrpcPort);
        var before = bay.Entries();
        link.LoseAnswers();
        using var zeroing = Zero(link.Port);
        Wait.Until(() => bay.Entries() == before + 4, Wait.Patience, () => $"the step is on record. {zeroing.Said}");
        await Task.Delay(OverPatience, TestContext.Current.CancellationToken);
        Assert.False(zeroing.HasExited, zeroing.Said);
        link.Join();

        Assert.True(zeroing.WaitForExit(Wait.Patience), zeroing.Said);
        Assert.Equal(0, zeroing.ExitCode);
        Assert.Contains("no answer yet; asking the daemon whether the step is on record", zeroing.Said);
        Assert.Contains("LF zeroed", zeroing.Said);
        Assert.Equal(before + 4, bay.Entries());
    }

    [Fact]
    public async Task A_step_that_was_lost_on_its_way_is_said_not_to_be_on_record()
    {
        await using var link = new Relay(bay.Rig.GrpcPort);
        var before = bay.Entries();
        link.Cut();
        using var zeroing = Zero(link.Port);
        Wait.Until(() => zeroing.Said.Contains("asking", StringComparison.Ordinal), Wait.Patience, () => $"it asks. {zeroing.Said}");
        link.Join();

        Assert.True(zeroing.WaitForExit(Wait.Patience), zeroing.Said);
        Assert.Equal(2, zeroing.ExitCode);
        Assert.Contains("The step is not on record. Take it again. (SL-427)", zeroing.Said);
        Assert.Equal(before, bay.Entries());
    }

    [Fact]
    public async Task When_nobody_answers_any_more_nothing_is_claimed()
    {
        await using var link = new Relay(bay.Rig.GrpcPort);
        link.Cut();
        using var channel = GrpcChannel.ForAddress($"http://127.0.0.1:{link.Port}");
        var late = 0;
        var steps = new StepAnswers(TimeProvider.System) { AskFor = TimeSpan.FromSeconds(1) };
        steps.Late += () => late++;
        var control = new PadControl.PadControlClient(channel.Intercept(steps));

        var soon = new CallOptions(deadline: DateTime.UtcNow + TimeSpan.FromSeconds(1));
        await Assert.ThrowsAsync<StepUnknownException>(async () => await control.ZeroPadsAsync(new ZeroPadsRequest { Who = "crew" }, soon));
        Assert.Equal(1, late);
    }

    [Fact]
    public void Where_no_daemon_is_that_is_said_at_once()
    {
        using var zeroing = Zero(FreePorts.Next());
        Assert.True(zeroing.WaitForExit(Wait.Patience), zeroing.Said);
        Assert.Equal(2, zeroing.ExitCode);
        Assert.Contains("(SL-420)", zeroing.Said);
        Assert.DoesNotContain("asking", zeroing.Said);
    }

    private static ChildProcess Zero(int port) => new("ScaleLink.Client", "scalelink.dll", "zero", "--who", "crew", "--daemon", $"http://127.0.0.1:{port}");
}
