using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Links;
using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;
using ZeroPoint = ScaleLink.Daemon.Bay.ZeroPoint;

namespace Daemon.Tests.Bay;

/// <summary>Counts to kilograms in service. The expected values follow from the definition of a calibration by hand.</summary>
public class PadScaleTests
{
    private static readonly Place Bench = new("bench", 9.80, 1e-5);
    private static readonly Place Track = new("track", 9.81, 1e-5);

    private static readonly PadCalibration Calibrated = PadCalibration.Starting("SLP-1", 0.001, 0.01, 600, 2, Bench, DateTimeOffset.UnixEpoch) with
    {
        Standing = CalibrationStanding.Calibrated, CellTrim = [1.01, 0.99], CurvatureKgPerCount2 = 1e-11, ZeroCounts = 2000, CalibratedToKg = 400,
    };

    [Fact]
    public void Trims_curve_and_gravity_all_count()
    {
        var scale = Scale(Track, Calibrated, Zero([1000, 1000]));
        // 100 000 counts a cell above zero, trimmed 101 000 + 99 000.
        var above = 200_000.0;
        Assert.Equal((0.001 * above + 1e-11 * above * above) * 9.80 / 9.81, scale.Kg(scale.Counts(Cells(101_000, 101_000), 2))!.Value, 1e-9);
        Assert.Equal(0, scale.Kg(scale.Counts(Cells(1000, 1000), 2))!.Value, 1e-12);
    }

    [Fact]
    public void A_zero_is_added_up_anew_when_the_trims_change()
    {
        var scale = Scale(Bench, Calibrated, Zero([3000, -1000]));
        scale.Use(Calibrated with { CellTrim = [1.05, 0.95] });
        Assert.Equal(0, scale.Kg(scale.Counts(Cells(3000, -1000), 2))!.Value, 1e-9);
    }

    [Fact]
    public void An_old_zero_without_cells_does_not_go_with_trims()
    {
        var old = new ZeroPoint("SLP-1", 2000, DateTimeOffset.UnixEpoch, "crew", null);
        Assert.Null(Scale(Bench, Calibrated, old).Zero);
        Assert.NotNull(Scale(Bench, Calibrated with { CellTrim = [1, 1] }, old).Zero);
    }

    [Fact]
    public void Without_zero_or_calibration_there_is_no_load()
    {
        Assert.Null(Scale(Bench, Calibrated, null).Kg(5000));
        Assert.Null(Scale(Bench, null, Zero([0, 0])).Kg(5000));
    }

    [Fact]
    public void Tracking_is_taken_off_and_begins_anew_with_a_zero()
    {
        var scale = Scale(Bench, Calibrated, Zero([1000, 1000]));
        scale.Track = new ZeroTrack(0.07);
        Assert.Equal(-0.07, scale.Kg(scale.Counts(Cells(1000, 1000), 2))!.Value, 1e-12);
        scale.Use(Zero([1000, 1000]));
        Assert.Equal(0, scale.Track.SumKg);
    }

    [Fact]
    public void A_sample_costs_no_allocation()
    {
        var scale = Scale(Track, Calibrated, Zero([1000, 1000]));
        var cells = Cells(50_000, 60_000);
        var sum = 0.0;
        for (var i = 0; i < 100; i++)
            sum += scale.Kg(scale.Counts(cells, 2)) ?? 0;
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 10_000; i++)
            sum += scale.Kg(scale.Counts(cells, 2)) ?? 0;
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.True(sum > 0);
    }

    private static PadScale Scale(Place here, PadCalibration? calibration, ZeroPoint? zero)
    {
        var scale = new PadScale(here);
        scale.Use(calibration);
        scale.Use(zero);
        return scale;
    }

    private static ZeroPoint Zero(double[] cells) => new("SLP-1", cells.Sum(), DateTimeOffset.UnixEpoch, "crew", null) { CellCounts = cells };

    private static CellCounts Cells(int first, int second)
    {
        var cells = new CellCounts();
        (cells[0], cells[1]) = (first, second);
        return cells;
    }
}
