using CsCheck;
using ScaleLink.Measure.Sentences;

namespace Measure.Tests.Sentences;

public class PlainTextTests
{
    // Which signs do not show: general categories Cc, Cf, Zl, Zp and Co of the Unicode Standard, table 4-4. The marks of direction: UAX #9, section 2.
    [Theory]
    [InlineData("plain", "plain")]
    [InlineData("  \u001b[2Jbell\a ", "[2Jbell")]
    [InlineData("averylongname", "averylongn")]
    [InlineData("a\u009b31mb", "a31mb")]
    [InlineData("LF\u202eRF\u202c", "LFRF")]
    [InlineData("\u2066a\u2069\u200e\u200f\u061c", "a")]
    [InlineData("a\nb\tc", "a b c")]
    [InlineData("a\u2028b\u2029c", "abc")]
    [InlineData("a\ud83db", "ab")]
    [InlineData("123456789\ud83d\ude00", "123456789")]
    [InlineData("\u4e2d\ud83d\ude00 é", "\u4e2d\ud83d\ude00 é")]
    [InlineData(null, "")]
    public void Text_from_outside_keeps_what_shows_and_is_capped(string? text, string expected) => Assert.Equal(expected, PlainText.Clean(text, 10));

    [Fact]
    public void What_was_cleaned_once_stays_as_it_is() => Gen.Select(Gen.String, Gen.Int[1, 60]).Sample((text, most) =>
    {
        var clean = PlainText.Clean(text, most);
        return clean.Length <= most && PlainText.IsClean(clean, most) && !clean.Any(char.IsControl);
    });

    [Fact]
    public void A_text_that_is_too_long_or_hides_something_is_not_clean()
    {
        Assert.True(PlainText.IsClean("Heron", 5));
        Assert.False(PlainText.IsClean("Heron2", 5));
        Assert.False(PlainText.IsClean("Her\u202eon", 10));
        Assert.False(PlainText.IsClean("Her\non\u001b", 10));
    }
}
