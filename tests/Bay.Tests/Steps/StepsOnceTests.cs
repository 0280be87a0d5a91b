using Grpc.Core;
using ScaleLink.Api;
using ScaleLink.Api.V1;
using ScaleLink.Measure.Diagnostics;
using Shared.Rig;

namespace Bay.Tests.Steps;

/// <summary>
/// A step with a number is taken once, and whoever lost its answer is told what became of it: while it is under way, afterwards, when it never came, when it
/// was refused, and by a daemon that was killed meanwhile. The project's own requirement.
/// </summary>
[Trait("needs", "bay")]
[Collection(StepsCollection.Name)]
public sealed class StepsOnceTests(StepsBay bay)
{
    [Fact]
    public void A_step_that_is_asked_about_is_answered_and_not_taken_again()
    {
        var first = Zero("step1");
        var entry = bay.Entries();

        Assert.Equal(first, Zero("step1", asksOnly: true));
        // The same call again is the same step, whatever its caller meant.
        Assert.Equal(first, Zero("step1"));

        Assert.Equal(entry, bay.Entries());
        // Another number is another step.
        Zeroed("another");
        Assert.True(bay.Entries() >= entry + 4);
    }

    [Fact]
    public void A_step_that_never_came_is_not_on_record_and_is_not_taken_should_it_come_late()
    {
        var before = bay.Entries();

        Assert.Equal("SL-427", Refusal(() => Zero("late", asksOnly: true)).Code);
        Assert.Equal("SL-427", Refusal(() => Zero("late")).Code);

        Assert.Equal(before, bay.Entries());
    }

    [Fact]
    public void A_refusal_is_told_again_as_it_was()
    {
        var nameless = new ZeroPadsRequest();
        var refused = Refusal(() => bay.Rig.Daemon.Control.ZeroPads(nameless, Numbered("nobody")));
        Assert.Equal(ServiceCodes.NameMissing.Text, refused.Code);
        Assert.Equal(refused, Refusal(() => bay.Rig.Daemon.Control.ZeroPads(nameless, Numbered("nobody", asksOnly: true))));
    }

    [Theory]
    [InlineData("")]
    [InlineData("a number with blanks")]
    [InlineData("01234567890123456789012345678901234567890123456789012345678901234")]
    public void A_number_that_is_none_is_refused(string number) => Assert.Equal("SL-415", Refusal(() => Zero(number)).Code);

    [Fact]
    public void A_number_cannot_stand_for_two_steps()
    {
        Zero("both");
        var other = Refusal(() => bay.Rig.Daemon.CarControl.SaveCar(new SaveCarRequest { Who = "test", File = "name = \"x\"" }, Numbered("both")));
        Assert.Equal("SL-415", other.Code);
    }

    [Fact]
    public void A_daemon_that_was_killed_since_knows_from_its_ledger()
    {
        var before = Zeroed("before");
        bay.Rig.Daemon.Process.Kill();
        bay.Rig.RestartDaemon();
        bay.Rig.WaitLive();
        var entries = bay.Entries();

        var told = Refusal(() => Zero(before, asksOnly: true));
        Assert.Equal("SL-428", told.Code);
        // Four pads, one entry each.
        Assert.Contains($"entries {entries - 3} to {entries}", told.Message);
        Assert.Equal("SL-428", Refusal(() => Zero(before)).Code);
        Assert.Equal(entries, bay.Entries());
        Assert.Equal("SL-427", Refusal(() => Zero("never", asksOnly: true)).Code);
    }

    private static CallOptions Numbered(string number, bool asksOnly = false)
    {
        var headers = new Metadata { { WireSteps.Number, number } };
        if (asksOnly)
            headers.Add(WireSteps.Ask, "yes");
        return new CallOptions(headers);
    }

    private static ScaleLink.Api.V1.Diagnostic Refusal(Action call) => Assert.Single(Assert.Throws<RpcException>(call).Reasons());

    // A pad that was zeroed a moment ago may not be quiet long enough for the next: number of the step that took all four.
    private string Zeroed(string prefix)
    {
        var tries = 0;
        Wait.Until(() => Zero($"{prefix}{++tries}").Results.All(r => r.Zero is not null), Wait.Patience, "zeroed");
        return $"{prefix}{tries}";
    }

    private ZeroPadsResponse Zero(string number, bool asksOnly = false) => bay.Rig.Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "test" }, Numbered(number, asksOnly));
}
