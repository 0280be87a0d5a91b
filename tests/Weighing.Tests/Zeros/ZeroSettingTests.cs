using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Zeros;

namespace Weighing.Tests.Zeros;

public class ZeroSettingTests
{
    static readonly PadCalibration Pad = PadCalibration.Starting("P1", 0.0025, 0.02, 450, 2, Place.On("workshop", 52, 80), DateTimeOffset.UnixEpoch);

    static readonly PadReading Empty = new()
    {
        Time = DateTimeOffset.UnixEpoch,
        CellCounts = [20_000, 21_000],
        CellSpreads = [3, 4],
        Settled = true,
    };

    static readonly ZeroLimits Vouched = new() { FirstShare = double.PositiveInfinity };

    [Fact]
    public void A_quiet_empty_pad_gives_its_zero_and_the_shift()
    {
        var (zero, refusals) = ZeroSetting.Judge(Pad, Empty, new(), referenceCounts: 40_800);
        Assert.Empty(refusals);
        Assert.Equal(41_000, zero!.Counts, 1e-9);
        Assert.Equal(0.5, zero.ShiftKg!.Value, 1e-9);
    }

    [Fact]
    public void Without_a_reference_no_shift_is_claimed() => Assert.Null(ZeroSetting.Judge(Pad, Empty, Vouched, null).Zero!.ShiftKg);

    [Theory]
    // Eight per cent of 450 kg are 36 kg; a wheel of a light car carries 100.
    [InlineData(36.5, false)]
    [InlineData(35.5, true)]
    [InlineData(-36.5, false)]
    public void A_first_zero_must_look_like_an_empty_pad(double kg, bool accepted)
    {
        var reading = Empty with { CellCounts = [kg / 0.0025, 0] };
        var (zero, refusals) = ZeroSetting.Judge(Pad, reading, new(), null);
        Assert.Equal(accepted, zero is not null);
        if (!accepted)
            Assert.Equal("SL-333", Assert.Single(refusals).Code);
        Assert.NotNull(ZeroSetting.Judge(Pad, reading, Vouched, null).Zero);
    }

    [Theory]
    // Two per cent of 450 kg either way; together the 4 % of OIML R 76-1:2006, 4.5.1.
    [InlineData(8.9, true)]
    [InlineData(9.1, false)]
    [InlineData(-8.9, true)]
    [InlineData(-9.1, false)]
    public void Beyond_the_range_the_pad_is_not_empty(double kg, bool accepted)
    {
        var (zero, refusals) = ZeroSetting.Judge(Pad, Empty, new(), 41_000 - kg / 0.0025);
        Assert.Equal(accepted, zero is not null);
        if (!accepted)
            Assert.Equal("SL-318", Assert.Single(refusals).Code);
    }

    [Theory]
    [InlineData(100, "SL-318")]
    [InlineData(1, null)]
    public void A_car_that_still_rocks_is_named_before_its_rocking(double kg, string? first)
    {
        var (zero, refusals) = ZeroSetting.Judge(Pad, Empty with { Settled = false }, new(), 41_000 - kg / 0.0025);
        Assert.Null(zero);
        Assert.Equal(first is null ? ["SL-301"] : [first, "SL-301"], refusals.Select(r => r.Code.Text));
    }

    [Fact]
    public void A_bad_reading_is_never_a_zero_and_everything_wrong_is_named_at_once()
    {
        var bad = Empty with { Settled = false, SaturatedCells = [2], RollDeg = -3 };
        var (zero, refusals) = ZeroSetting.Judge(Pad, bad, new(), null);
        Assert.Null(zero);
        Assert.Equal(["SL-302", "SL-301", "SL-313"], refusals.Select(r => r.Code.Text));
    }

    [Fact]
    public void Another_number_of_cells_is_another_pad() =>
        Assert.Equal("SL-332", Assert.Single(ZeroSetting.Judge(Pad, Empty with { CellCounts = [1] }, new(), null).Refusals).Code);

    [Fact]
    public void A_cell_without_a_number_is_named()
    {
        var refusal = Assert.Single(ZeroSetting.Judge(Pad, Empty with { CellCounts = [20_000, double.NaN] }, new(), null).Refusals);
        Assert.Equal("SL-303", refusal.Code);
        Assert.Contains("cell 2", refusal.Message, StringComparison.Ordinal);
    }
}
