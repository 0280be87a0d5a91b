using CarOnPads.Physics;
using ScaleLink.Daemon.Workflows.InclinometerZeros;
using ScaleLink.Measure;
using ScaleLink.Protocol.PadFrames;

namespace Daemon.Tests.Workflows.InclinometerZeros;

/// <summary>What would spoil a reversal test is refused under its code, and changes nothing.</summary>
public class InclinometerZeroRefusalTests
{
    [Fact]
    public void A_pad_that_is_loaded_moves_or_does_not_say_how_it_tilts_is_not_read()
    {
        using var bay = new InclinometerZeroBay("tilt-noise");
        bay.Zero();
        bay.Bench.PutMass(Wheel.LF, 40, 0, 0, atOnce: true);
        bay.Run(2.5);
        Assert.Equal("SL-547", bay.Read());
        bay.Bench.PutMass(Wheel.LF, 0, 0, 0, atOnce: true);
        bay.Run(2.5);
        bay.Bench.TurnPad(Wheel.LF);
        bay.Run(1);
        Assert.Equal("SL-548", bay.Read());
        bay.Pad(Corner.LF).Faults.Reported = PadStatus.TiltFault;
        bay.Run(0.5);
        Assert.Equal("SL-546", bay.Read());
        Assert.Contains("SL-207", bay.Refused(Corner.LF)!.Message);
        bay.Pad(Corner.LF).Faults.Reported = PadStatus.None;
        bay.Run(1);
        // The window after the fault is not whole yet.
        Assert.Equal("SL-548", bay.Read());
        bay.Run(2);
        Assert.Null(bay.Read());
        bay.Pad(Corner.RF).Faults.Frozen = true;
        bay.Run(1);
        foreach (var pad in bay.Pads)
            pad.OnTrouble(Code.Read("SL-106"), "It sends nothing.", "Check its cable.", stops: pad.Corner == Corner.RF);
        Assert.Equal("SL-343", bay.Read(Corner.RF));
        Assert.Single(bay.TakeUp().At(bay.Pads[0])!.Test!.Test.Readings);
    }

    [Fact]
    public void A_pad_that_was_not_turned_is_told_and_on_level_ground_the_crew_is_asked()
    {
        using var bay = new InclinometerZeroBay("tilt-noise,seating");
        bay.Pad(Corner.LF).TiltZero = (0.4, 0);
        bay.Run(3);
        Assert.Null(bay.Read());
        Assert.Equal("SL-549", bay.Read());
        // What nobody can see is not guessed: the crew says it, and then the ground is level for the rest of the test.
        bay.Turn(Corner.LF);
        Assert.Equal("SL-549", bay.Read());
        Assert.Null(bay.Read(saidTurned: true));
        Assert.Null(bay.Read());
        bay.Turn(Corner.LF);
        Assert.Null(bay.Read());
        Assert.Equal(0.4, bay.Pads[0].Snapshot().InclinometerZero!.Zero.PitchDeg, 0.05);

        bay.Ground(Corner.RF, 0.7, 0);
        bay.Run(3);
        Assert.Null(bay.Read(Corner.RF));
        bay.Turn(Corner.RF);
        Assert.Null(bay.Read(Corner.RF));
        Assert.Equal("SL-553", bay.Read(Corner.RF, saidTurned: true));
    }

    [Fact]
    public void Zeros_that_disagree_or_are_too_large_come_to_nothing_and_the_zero_before_stays()
    {
        using var bay = new InclinometerZeroBay();
        bay.Ground(Corner.LF, 0.7, 0);
        bay.Pad(Corner.LF).TiltZero = (0.2, 0);
        bay.Run(3);
        bay.Test(Corner.LF);
        foreach (var (zero, code) in new[] { (1.3, "SL-554"), (0.5, "SL-527") })
        {
            Three(bay, zero);
            // The sensor slipped, or nothing did and it is simply bent.
            bay.Pad(Corner.LF).TiltZero = (code == "SL-527" ? 0.9 : zero, 0);
            bay.Turn(Corner.LF);
            Assert.Equal(code, bay.Read());
            Assert.Equal(3, bay.Desk.At(bay.Pads[0])!.Test!.Test.Readings.Count);
            Assert.Equal(0.2, bay.Pads[0].Snapshot().InclinometerZero!.Zero.PitchDeg, 0.002);
            bay.Desk.Abandon(bay.Pads[0], "", "crew");
        }

        Assert.Equal("SL-555", InclinometerZeroBay.Refused(() => bay.Desk.Abandon(bay.Pads[0], "", "crew"))!.Code);
        Assert.Equal("SL-555", InclinometerZeroBay.Refused(() => bay.Desk.Clear(bay.Pads[1], "", "crew"))!.Code);
    }

    [Fact]
    public void A_step_that_the_caller_does_not_see_coming_is_refused()
    {
        using var bay = new InclinometerZeroBay();
        bay.Ground(Corner.LF, 0.7, 0);
        bay.Run(3);
        Assert.Equal("SL-555", bay.Read(number: 2));
        Assert.Null(bay.Read(number: 1));
        bay.Turn(Corner.LF);
        Assert.Equal("SL-555", bay.Read(number: 1));
        Assert.Equal("SL-555", InclinometerZeroBay.Refused(() => bay.Desk.Read(bay.Pads[0], new InclinometerZeroStep("SLP-1002"), "crew"))!.Code);
        Assert.Null(bay.Read(number: 2));
    }

    [Fact]
    public void A_test_goes_on_after_a_restart_but_not_tomorrow_and_not_at_another_corner()
    {
        using var bay = new InclinometerZeroBay();
        bay.Ground(Corner.LF, 0.7, 0);
        bay.Run(3);
        Assert.Null(bay.Read());
        bay.Turn(Corner.LF);
        bay.TakeUp().Read(bay.Pads[0], new InclinometerZeroStep(Number: 2), "crew");
        Assert.Equal(2, bay.Desk.At(bay.Pads[0])!.Test!.Test.Readings.Count);
        bay.Bench.MovePads(3);
        bay.Run(4);
        Assert.Contains("The test was begun at LF", bay.Desk.At(bay.Pads[1])!.CutShort);
        Assert.Equal("SL-555", bay.Read(Corner.RF, number: 3));
        bay.Bench.MovePads(1);
        bay.Run(4);
        Assert.Equal(2, bay.Desk.At(bay.Pads[0])!.Test!.Test.Readings.Count);
        bay.Pause(TimeSpan.FromMinutes(31));
        Assert.Contains("cut short", bay.Desk.At(bay.Pads[0])!.CutShort);
        // The pad's clock has not gone on meanwhile: it starts anew.
        bay.Pad(Corner.LF).BrownOut(bay.Bench.Time);
        bay.Run(4);
        Assert.Null(bay.Read(number: 1));
        Assert.Equal("", bay.Desk.At(bay.Pads[0])!.CutShort);
    }

    // Three readings of a test with this zero.
    private static void Three(InclinometerZeroBay bay, double zero)
    {
        bay.Pad(Corner.LF).TiltZero = (zero, 0);
        bay.Run(3);
        Assert.Null(bay.Read());
        for (var k = 0; k < 2; k++)
        {
            bay.Turn(Corner.LF);
            Assert.Null(bay.Read());
        }
    }
}
