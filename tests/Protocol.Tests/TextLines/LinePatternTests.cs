using ScaleLink.Protocol.PadFrames;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Protocol.Tests.TextLines;

public class LinePatternTests
{
    [Theory]
    [InlineData("W 12.3 kg", 123_000)]
    [InlineData("W -0.5 kg", -5_000)]
    public void A_line_that_fits_gives_its_number(string line, int counts)
    {
        Assert.True(Lines.Pattern().TryRead(line, out var reading));
        Assert.Equal(counts, reading[0]);
    }

    [Theory]
    [InlineData("W 12.3 k")]
    [InlineData(" 12.3 kg")]
    [InlineData("W 12.3 kg kg")]
    [InlineData("W 1W 12.3 kg")]
    [InlineData("")]
    public void A_pattern_has_to_fit_the_whole_line(string line) => Assert.False(Lines.Pattern().TryRead(line, out _));

    [Fact]
    public void Blanks_behind_a_sign_and_decimal_commas_are_numbers()
    {
        Assert.True(Lines.Pattern(@"(?<load>[-+] *\d+[.,]\d+)").TryRead("-   12,5", out var reading));
        Assert.Equal(-125_000, reading[0]);
    }

    [Fact]
    public void Several_cells_and_angles_come_from_one_line()
    {
        var pattern = Lines.Pattern(@"(?<load1>\d+);(?<load2>\d+);(?<pitch>-?\d+\.\d+);(?<roll>-?\d+\.\d+);(?<temperature>\d+)", unit: FieldUnit.Count);
        Assert.True(pattern.TryRead("100;200;0.25;-0.50;21", out var reading));
        Assert.Equal((2, 300L, 0.25, -0.5, 21.0), (reading.Cells, reading.Sum, reading.PitchDegrees, reading.RollDegrees, reading.TemperatureCelsius));
    }

    [Theory]
    [InlineData("ST 12.5", false)]
    [InlineData("OL 99.9", true)]
    public void A_word_for_over_range_is_a_converter_at_its_limit(string line, bool isOver)
    {
        Assert.True(Lines.Pattern(@"(?:ST|US|(?<over>OL)) (?<load>\d+\.\d+)").TryRead(line, out var reading));
        Assert.Equal(isOver, reading.Status.HasFlag(PadStatus.Cell0AtLimit));
    }

    [Fact]
    public void A_group_that_was_not_met_spoils_the_line() =>
        Assert.False(Lines.Pattern(@"(?<load>\d+)|idle").TryRead("idle", out _));

    // The rule of NMEA 0183 version 3.0, see LineChecksum for where it is quoted. XOR of "GPGLL,5300.97914,N,00259.98174,E,125926,A" is 28 in many public examples of the rule.
    [Theory]
    [InlineData("$GPGLL,5300.97914,N,00259.98174,E,125926,A*28", true)]
    [InlineData("$GPGLL,5300.97914,N,00259.98174,E,125926,A*29", false)]
    [InlineData("$GPGLL,5300.97915,N,00259.98174,E,125926,A*28", false)]
    public void A_checksum_is_held_against_the_line(string line, bool isGood)
    {
        var pattern = Lines.Pattern(@"\$GPGLL,(?<load>[\d.]+),N,[\d.]+,E,\d+,A\*(?<check>[0-9A-F]{2})", LineChecksum.Xor);
        Assert.Equal(isGood, pattern.TryRead(line, out _));
        Assert.True(pattern.IsChecked);
    }

    [Theory]
    [InlineData("(", "")]
    [InlineData(@"(?<load>\d+)(?=x)", "")]
    [InlineData(@"\d+", "no group that gives a number")]
    [InlineData(@"(?<weight>\d+)", "no group is called weight")]
    [InlineData(@"(?<load>\d+) (?<load1>\d+)", "twice")]
    [InlineData(@"(?<load2>\d+)", "without a gap")]
    [InlineData(@"(?<load>\d+)(?<check>..)", "no checksum is named")]
    public void What_is_wrong_with_a_pattern_is_said(string pattern, string reason)
    {
        var problem = Lines.Problem(pattern);
        Assert.NotEmpty(problem);
        Assert.Contains(reason, problem);
    }

    [Fact]
    public void A_checksum_needs_its_group() => Assert.Contains("group check", Lines.Problem(@"(?<load>\d+)", LineChecksum.Xor));

    // 10 000 a's make an engine that backtracks try for longer than the universe lasts.
    [Fact]
    public void No_line_can_hold_the_matching_up() =>
        Assert.False(Lines.Pattern(@"(a|a|a)*(a+)+(?<load>\d)").TryRead(new string('a', 10_000), out _));
}
