using Shared.Rig;

namespace Bay.Tests.Calibration;

/// <summary>A command that waits for the car, and a daemon that stands still for a while in the middle of it.</summary>
[Trait("needs", "bay")]
public class SilenceTests
{
    // Longer than a feed may be silent before it is opened again.
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(8);

    [Fact]
    public void A_silence_in_the_middle_costs_time_and_not_the_weighing()
    {
        using var bay = new BayRig("noise,quantisation");
        bay.Zero();
        using var program = new ChildProcess("ScaleLink.Client", "scalelink.dll", ["calibrations", "pad-interchange", "record", "--wait", "60", "--daemon", $"http://127.0.0.1:{bay.GrpcPort}", "--who", "crew"]);
        Thread.Sleep(TimeSpan.FromSeconds(2));
        bay.Daemon.Process.Suspend();
        Thread.Sleep(Silence);
        Assert.False(program.HasExited, program.Said);
        bay.Daemon.Process.Resume();
        bay.Simulator.DoAndWait("""{"do":"lower"}""");
        bay.Simulator.DoAndWait("""{"do":"settle","seconds":1}""");
        Assert.True(program.WaitForExit(Wait.Patience), program.Said);
        Assert.True(program.ExitCode == 0, program.Said);
    }
}
