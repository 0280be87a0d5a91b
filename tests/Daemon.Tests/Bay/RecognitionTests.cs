using NSubstitute;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Measure;
using ScaleLink.Weighing.InclinometerZeros;
using ScaleLink.Weighing.Pads;
using ZeroPoint = ScaleLink.Daemon.Bay.ZeroPoint;

namespace Daemon.Tests.Bay;

/// <summary>What hangs on a pad, and what is void when it is not the pad it was. Only the ledger is left out.</summary>
public class RecognitionTests
{
    private static readonly Place Here = new("bay", 9.81, 1e-6);
    private static readonly PadIdentity Pad = new("SLP-1", "1.0", 7, 2, 80, 600);
    private static readonly PadConfiguration Configuration = new()
    {
        Corner = Corner.LF, Source = new SourceConfiguration { Link = "/dev/pad", Baud = 9600, Protocol = ProtocolKind.PadFrames }, KgPerCount = 0.001, SpanUncertaintyPercent = 1, CorrectTilt = true,
    };

    private static readonly PadCalibration Calibrated = PadCalibration.Starting("SLP-1", 0.00101, 0.001, 600, 2, Here, DateTimeOffset.UnixEpoch) with { Standing = CalibrationStanding.Calibrated, ZeroCounts = 1000 };

    private readonly IZeroStore _zeros = Substitute.For<IZeroStore>();
    private readonly ICalibrationStore _calibrations = Substitute.For<ICalibrationStore>();
    private readonly PadScale _scale = new(Here);
    private readonly FaultSet _faults = new();

    [Fact]
    public void A_pad_never_calibrated_starts_with_the_bay_file_under_the_same_name_in_every_run()
    {
        Recognise(Pad);
        Assert.False(_scale.Calibration!.IsCalibrated);
        var first = _scale.Calibration.Identity;
        Recognise(Pad with { BootId = 8 });
        Assert.Equal(first, _scale.Calibration.Identity);
        Assert.Equal(["SL-341"], Codes);
    }

    [Fact]
    public void A_calibrated_pad_weighs_with_its_calibration_procedure()
    {
        _calibrations.InEffect("SLP-1").Returns(Calibrated);
        _zeros.Latest("SLP-1").Returns(Zero(500, 510));
        Recognise(Pad);
        Assert.Equal(Calibrated.Identity, _scale.Calibration!.Identity);
        Assert.Empty(Codes);
    }

    [Theory]
    [InlineData(3, 600)]
    [InlineData(2, 1000)]
    public void Other_cells_or_another_capacity_make_calibration_and_zero_void(int cells, double capacity)
    {
        _calibrations.InEffect("SLP-1").Returns(Calibrated);
        _zeros.Latest("SLP-1").Returns(Zero(500, 510));
        Recognise(Pad with { Cells = cells, CapacityKg = capacity });
        Assert.False(_scale.Calibration!.IsCalibrated);
        Assert.Null(_scale.Zero);
        Assert.Equal(["SL-341", "SL-346"], Codes);
    }

    [Fact]
    public void A_zero_far_from_that_of_the_calibration_procedure_is_named()
    {
        _calibrations.InEffect("SLP-1").Returns(Calibrated);
        // Half a percent of 600 kg are 3 kg, and 4 kg are 4000 counts.
        _zeros.Latest("SLP-1").Returns(Zero(500, 4500));
        Recognise(Pad);
        Assert.Equal(["SL-347"], Codes);
        Assert.Contains("+4.0 kg", _faults.Present[0].Message);
    }

    [Fact]
    public void Tracking_goes_on_where_it_stood()
    {
        var zero = Zero(500, 500);
        _zeros.Latest("SLP-1").Returns(zero);
        _zeros.TrackedKg(zero).Returns(0.12);
        Recognise(Pad);
        Assert.Equal(0.12, _scale.Track.SumKg);
    }

    [Fact]
    public void Without_a_word_in_the_bay_file_there_is_no_calibration()
    {
        Recognition.Of(Pad, Configuration with { KgPerCount = null }, new PadRecords(_zeros, _calibrations, Here), _scale, _faults, 0);
        Assert.Null(_scale.Calibration);
        Assert.Contains("SL-342", Codes);
    }

    [Fact]
    public void A_tested_inclinometer_counts_only_while_the_angles_come_from_it()
    {
        var tilts = Substitute.For<IInclinometerZeroStore>();
        var bus = Configuration.Source with { Link = "/dev/bus" };
        PadConfiguration Slave(byte slave) => Configuration with { Tilt = bus with { Modbus = new ModbusConfiguration(slave, 10, default, null!) } };
        tilts.InEffect("SLP-1").Returns(new SavedInclinometerZero(new InclinometerZero(0.3, 0, 0.01, 0, 0), DateTimeOffset.UnixEpoch, "crew", Recognition.TiltSourceOf(Slave(11))));
        var records = new PadRecords(_zeros, _calibrations, Here) { InclinometerZeros = tilts };
        Assert.Equal(0.3, Recognition.InclinometerZero(Pad, Slave(11), records)!.Zero.PitchDeg);
        Assert.Null(Recognition.InclinometerZero(Pad, Slave(12), records));
        Assert.Null(Recognition.InclinometerZero(Pad, Configuration, records));
        Assert.Null(Recognition.InclinometerZero(Pad with { SerialNumber = "SLP-2" }, Slave(11), records));
    }

    private IEnumerable<string> Codes => _faults.Present.Select(f => f.Code.Text);

    private static ZeroPoint Zero(params double[] cells) => new("SLP-1", cells.Sum(), DateTimeOffset.UnixEpoch, "crew", null) { CellCounts = cells };

    private void Recognise(PadIdentity identity) => Recognition.Of(identity, Configuration, new PadRecords(_zeros, _calibrations, Here), _scale, _faults, 0);
}
