using Shared.Rig;
using Grpc.Core;
using ScaleLink.Api.V1;

namespace Timing.Tests;

/// <summary>What listening to a pad shows, with one imperfection of the simulator switched on at a time.</summary>
[Trait("needs", "bay")]
public class DiagnosisTests(DiagnosedBay diagnosed) : IClassFixture<DiagnosedBay>
{
    [Fact]
    public void Rate_noise_and_the_line_of_the_mains_are_found()
    {
        var bay = diagnosed.Rig;
        var found = bay.Daemon.Pads.DiagnosePad(new DiagnosePadRequest { Corner = Corner.Lf, Seconds = 5 });
        Assert.Equal("SLP-1001", found.SerialNumber);
        Assert.InRange(found.MeasuredRateHz, 318, 322);
        Assert.Equal((0ul, 0ul, false), (found.MissedSamples, found.UnsoundSamples, found.Frozen));
        Assert.InRange(found.NoiseKg, 0.01, 1);
        Assert.InRange(found.Lines[0].Hz, 49.5, 50.5);
        // White noise: a mean over sixteen times as many samples varies less.
        Assert.True(found.Allan[^1].DeviationKg < found.Allan[0].DeviationKg);
    }

    [Fact]
    public void What_people_do_is_in_the_log_and_so_is_why_it_was_refused()
    {
        var bay = diagnosed.Rig;
        Wait.Until(() => bay.Daemon.Process.Said.Contains("test: ZeroPads", StringComparison.Ordinal), Wait.Patience, () => bay.Daemon.Process.Said);
        Assert.Throws<RpcException>(() => bay.Daemon.CarControl.UseCar(new UseCarRequest { Name = "Nobody", Who = "Ada\u001b[31m" }));
        Wait.Until(() => bay.Daemon.Process.Said.Contains("Ada[31m: UseCar refused: ", StringComparison.Ordinal), Wait.Patience, () => bay.Daemon.Process.Said);
        bay.Daemon.Pads.ListPads(new ListPadsRequest());
        Assert.DoesNotContain("ListPads", bay.Daemon.Process.Said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_converter_that_stands_still_is_told()
    {
        var bay = diagnosed.Rig;
        bay.Simulator.Do("""{"do":"freeze-value","corner":"LR"}""");
        Assert.True(bay.Daemon.Pads.DiagnosePad(new DiagnosePadRequest { Corner = Corner.Lr, Seconds = 2 }).Frozen);
        Assert.False(bay.Daemon.Pads.DiagnosePad(new DiagnosePadRequest { Corner = Corner.Rr, Seconds = 2 }).Frozen);
        var failure = Assert.Throws<RpcException>(() => bay.Daemon.Pads.DiagnosePad(new DiagnosePadRequest { Corner = Corner.Rr, Seconds = 90 }));
        Assert.Contains("SL-414", failure.Status.Detail);
    }
}

/// <summary>Empty pads with noise and the hum of the mains.</summary>
public sealed class DiagnosedBay : IDisposable
{
    public DiagnosedBay() => Rig.Zero();

    internal BayRig Rig { get; } = new("noise,hum", rate: 320);

    public void Dispose() => Rig.Dispose();
}
