using Bay.Tests.Asking;
using Grpc.Core;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.InclinometerZeros;

/// <summary>
/// A pad's inclinometer tested over real pseudo-terminals, the daemon killed in the middle. The truth is the simulator's: what it was told
/// of ground and zero, and what its cells feel.
/// </summary>
[Trait("needs", "bay")]
public class InclinometerZeroOnABayTests
{
    private const double GroundPitch = 1.1, ZeroPitch = 0.45, ZeroRoll = -0.3;
    private const long HandsOffNs = 2_200_000_000;
    // Standard uncertainties that one test of many never misses by; how many lie within two is shown in virtual time.
    private const double FarOff = 4;

    [Fact]
    public void A_zero_is_found_by_turning_the_pad_survives_kills_and_is_taken_off_the_tilt_but_not_off_the_raw_samples()
    {
        using var bay = new BayRig("tilt-noise,seating");
        bay.Simulator.Do(FormattableString.Invariant($$"""{"do":"pad-tilt","corner":"RF","pitch_deg":{{GroundPitch}}}"""));
        bay.Simulator.Do(FormattableString.Invariant($$"""{"do":"tilt-zero","corner":"RF","pitch_deg":{{ZeroPitch}},"roll_deg":{{ZeroRoll}}}"""));
        bay.Zero();
        Read(bay, 1);
        Assert.Equal("SL-549", Refused(() => Read(bay, 2)));
        Turn(bay);
        Read(bay, 2);
        // Somebody trips over the cable of the mini-PC.
        bay.Daemon.Process.Kill();
        bay.RestartDaemon();
        bay.WaitLive();
        Assert.Equal(2, Of(bay).Readings.Count);
        Turn(bay);
        Read(bay, 3);
        Turn(bay);
        var tested = Read(bay, 4).Zero;
        Assert.Equal(ZeroPitch, tested.PitchDeg.Estimate, FarOff * tested.PitchDeg.StandardUncertainty);
        Assert.Equal(ZeroRoll, tested.RollDeg.Estimate, FarOff * tested.RollDeg.StandardUncertainty);

        bay.Daemon.Process.Kill();
        bay.RestartDaemon();
        bay.WaitLive();
        Assert.Equal(tested, Of(bay).Zero);
        InclinometerZeros(bay, -GroundPitch, 0);
        bay.PutCarOn();
        Assert.Contains(bay.Settled().Corners, c => c.Corner == Corner.Rf && c.Budget.Any(p => p.Name == "tilt" && p.StandardUncertaintyKg < 0.01) && c.Corrections.Any(x => x.Name == "tilt"));
        Assert.Equal("SL-547", Refused(() => Read(bay, 1)));
        bay.Daemon.InclinometerZeroControl.ClearInclinometerZero(new ClearInclinometerZeroRequest { Corner = Corner.Rf, Who = "crew" });
        InclinometerZeros(bay, ZeroPitch - GroundPitch, ZeroRoll);
        Assert.Equal("SL-555", Refused(() => bay.Daemon.InclinometerZeroControl.ClearInclinometerZero(new ClearInclinometerZeroRequest { Corner = Corner.Rf, Who = "crew" })));
    }

    private static PadInclinometerZero Of(BayRig bay) => bay.Daemon.InclinometerZeros.ListInclinometerZeros(new ListInclinometerZerosRequest()).Pads.Single(p => p.Corner == Corner.Rf);

    private static PadInclinometerZero Read(BayRig bay, uint number) =>
        bay.Daemon.InclinometerZeroControl.ReadTilt(new ReadTiltRequest { Corner = Corner.Rf, SerialNumber = "SLP-1002", Number = number, Who = "crew" });

    private static void Turn(BayRig bay)
    {
        bay.Simulator.DoAndWait("""{"do":"turn-pad","corner":"RF"}""");
        // Hands off for the two seconds of a reading.
        using var samples = new SamplesWatch(bay.Daemon);
        Wait.Until(() => samples.Of(Corner.Rf) is [var first, .., var last] && last.AtNs - first.AtNs > HandsOffNs, Wait.Patience, "RF was left alone");
    }

    // What the patch report says, and the raw samples, which carry the zero whatever was tested.
    private static void InclinometerZeros(BayRig bay, double pitch, double roll)
    {
        PadTilt? tilt = null;
        Wait.Until(() => (tilt = bay.Daemon.Patch.GetPatch(new GetPatchRequest()).PadTilts.Single(l => l.Corner == Corner.Rf)) is { HasPitchDeg: true } l && Math.Abs(l.PitchDeg - pitch) < 0.08 && Math.Abs(l.RollDeg - roll) < 0.08,
            Wait.Patience, () => $"RF tilts {pitch}, {roll}: {tilt}");
        using var samples = bay.Daemon.Feed.WatchSamples(new WatchSamplesRequest { Corners = { Corner.Rf } });
        Assert.True(samples.ResponseStream.MoveNext(CancellationToken.None).WaitAsync(Wait.Patience).GetAwaiter().GetResult());
        Assert.Equal(ZeroPitch - GroundPitch, samples.ResponseStream.Current.Samples[0].PitchDeg, 0.12);
    }

    private static string Refused(Action act) => Calls.In(Assert.Throws<RpcException>(act));
}
