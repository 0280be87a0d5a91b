using CsCheck;
using ScaleLink.Client.Runtime;

namespace Client.Tests.Runtime;

public class PeerTextTests
{
    [Theory]
    [InlineData("\e[31mred\a", "[31mred")]
    [InlineData("a\u202eb\u200bc", "abc")]
    [InlineData("line\nbreak\ttab", "line break tab")]
    [InlineData("e\u0301", "e")]
    [InlineData("\u4e2d\ud83d\ude00", "??")]
    [InlineData("LR up ¼ turn – 0.5 °", "LR up ¼ turn – 0.5 °")]
    [InlineData("LR up 1⅛, RR ⅜, LF ⅝, RF ⅞", "LR up 1⅛, RR ⅜, LF ⅝, RF ⅞")]
    public void Only_plain_signs_of_one_column_pass(string from, string to) => Assert.Equal(to, PeerText.Clean(from, 40));

    [Theory]
    [InlineData("LR up 1⅛ turns, RF down ½", "LR up 1 1/8 turns, RF down 1/2")]
    [InlineData("50.1 % ± 0.2 %", "50.1 % +- 0.2 %")]
    public void A_terminal_without_such_signs_reads_them_spelt_out(string from, string to)
    {
        Assert.Equal(to, Glyphs.Plain.Say(from));
        Assert.Equal(from, Glyphs.Rich.Say(from));
    }

    [Fact]
    public void Half_a_surrogate_pair_is_no_sign() => Assert.Equal("ab", PeerText.Clean("a\ud83db", 40));

    [Fact]
    public void Long_text_is_cut_and_says_so() => Assert.Equal("abcdefg...", PeerText.Clean("abcdefghijklmnop", 10));

    [Fact]
    public void Whatever_comes_is_capped_and_free_of_control() => Gen.Select(Gen.String, Gen.Int[3, 60]).Sample((text, most) =>
    {
        var clean = PeerText.Clean(text, most);
        return clean.Length <= most && !clean.Any(c => char.IsControl(c) || char.IsSurrogate(c));
    });
}
