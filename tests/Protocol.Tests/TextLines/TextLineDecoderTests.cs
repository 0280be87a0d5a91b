using Shared;
using System.Buffers;
using CsCheck;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Protocol.Tests.TextLines;

public class TextLineDecoderTests
{
    [Theory]
    [InlineData("\r\n")]
    [InlineData("\n")]
    [InlineData("\r")]
    public void Any_usual_end_ends_a_line(string end)
    {
        var decoder = new TextLineDecoder(Lines.Pattern(), LineEnd.ReturnOrFeed);
        var readings = Lines.Decode(decoder, $"W 9.9 kg{end}W 1.0 kg{end}  W 2.0 kg {end}");
        Assert.Equal([10_000, 20_000], readings.Select(r => r.Sum));
        Assert.Equal(0, decoder.Counters.RefusedLines);
    }

    // "2.3 kg" may be the rest of "112.3 kg".
    [Fact]
    public void What_comes_before_the_first_end_is_never_a_reading()
    {
        var decoder = new TextLineDecoder(Lines.Pattern(@"(?<load>[\d.]+) kg"), LineEnd.ReturnOrFeed);
        Assert.Equal([1_123_000L], Lines.Decode(decoder, "2.3 kg\r\n112.3 kg\r\n").Select(r => r.Sum));
        Assert.Equal(0, decoder.Counters.RefusedLines);
    }

    [Fact]
    public void A_chosen_byte_ends_a_line()
    {
        var decoder = new TextLineDecoder(Lines.Pattern(), LineEnd.Only(3));
        Assert.Equal([15_000L], Lines.Decode(decoder, "\x3W 1.5 kg\r\n\x3").Select(r => r.Sum));
    }

    // Start and end of text of ISO/IEC 646 (ECMA-6) as indicators use them: common practice, no published source.
    [Theory]
    [InlineData("\x2", "\r\n", null)]
    [InlineData("\x2", "\r", null)]
    [InlineData("\x2", "\x3\r\n", null)]
    [InlineData("\x2", "\r\n\x3", null)]
    [InlineData("\x2", "\x3", 3)]
    [InlineData("", "\x3", 3)]
    public void Start_and_end_of_text_wrap_a_line(string start, string end, int? only)
    {
        var decoder = new TextLineDecoder(Lines.Pattern(), only is { } one ? LineEnd.Only((byte)one) : LineEnd.ReturnOrFeed);
        Assert.Equal([10_000, 20_000], Lines.Decode(decoder, $"9 kg{end}{start}W 1.0 kg{end}{start} W 2.0 kg{end}").Select(r => r.Sum));
        Assert.Equal(0, decoder.Counters.RefusedLines);
    }

    [Fact]
    public void Start_of_text_inside_a_line_is_no_text()
    {
        var decoder = new TextLineDecoder(Lines.Pattern(), LineEnd.ReturnOrFeed);
        Assert.Empty(Lines.Decode(decoder, "\nW \x2 1.0 kg\nW 1.0 kg\x3 7A\n"));
        Assert.Equal(2, decoder.Counters.RefusedLines);
    }

    [Fact]
    public void A_pause_ends_a_line_that_has_no_end()
    {
        var decoder = new TextLineDecoder(Lines.Pattern(), LineEnd.PauseOnly);
        Assert.False(decoder.TryFinish(Lines.Sequence("1.5 kg"), out _));
        Assert.False(decoder.TryRead(Lines.Sequence("W 1."), out _, out _, out _));
        Assert.True(decoder.TryFinish(Lines.Sequence("W 1.5 kg"), out var reading));
        Assert.Equal(15_000, reading.Sum);
        Assert.False(decoder.TryFinish(Lines.Sequence("W 1.5"), out _));
        Assert.Equal(1, decoder.Counters.RefusedLines);
    }

    [Fact]
    public void Lines_that_do_not_fit_are_counted_and_shown_clean()
    {
        var decoder = new TextLineDecoder(Lines.Pattern(), LineEnd.ReturnOrFeed);
        Assert.Equal([20_000L], Lines.Decode(decoder, "\nW \u00B91.0 \x1b[2J kg\nW 2.0 kg\n").Select(r => r.Sum));
        Assert.Equal((1L, 1L), (decoder.Counters.Lines, decoder.Counters.RefusedLines));
        Assert.Equal("W .1.0 .[2J kg", decoder.LastRefused);
    }

    [Fact]
    public void A_line_without_end_is_dropped_as_it_comes_with_the_rest_of_it()
    {
        var decoder = new TextLineDecoder(Lines.Pattern(@"x*(?<load>\d+)"), LineEnd.ReturnOrFeed);
        Assert.Equal([70_000L], Lines.Decode(decoder, "\n" + new string('x', 100_000) + "5\n7\n", 4096).Select(r => r.Sum));
        Assert.Equal(1, decoder.Counters.RefusedLines);
        Assert.Equal(100_005, decoder.Counters.Bytes);
    }

    [Fact]
    public void However_the_bytes_are_cut_the_readings_are_the_same() =>
        Seeded.Check(Gen.Select(Streams, Gen.Int[1, 90].Array[1, 6]), 1500, cut =>
        {
            var (stream, reads) = cut;
            var whole = new TextLineDecoder(Lines.Pattern(), LineEnd.ReturnOrFeed);
            var split = new TextLineDecoder(Lines.Pattern(), LineEnd.ReturnOrFeed);
            Assert.Equal(Lines.Decode(whole, stream).Select(r => r.Sum), Lines.Decode(split, stream, reads).Select(r => r.Sum));
            Assert.Equal(whole.Counters, split.Counters);
        });

    // A line cut short swallows the one behind it; every other whole line comes through, and none that was not sent.
    [Fact]
    public void Damage_costs_at_most_the_line_behind_it()
    {
        var random = new Random(20264);
        var decoder = new TextLineDecoder(Lines.Pattern(@"W (?<load>\d+\.\d) kg", LineChecksum.None), LineEnd.ReturnOrFeed);
        var (stream, expected, swallows) = (new List<byte>("\n"u8.ToArray()), new List<long>(), false);
        for (var k = 1; k < 20_000; k++)
        {
            var line = System.Text.Encoding.ASCII.GetBytes($"W {k}.0 kg\r\n");
            if (random.Next(4) == 0)
            {
                stream.AddRange(line[..random.Next(1, line.Length - 2)]);
                swallows = true;
                continue;
            }

            stream.AddRange(line);
            if (!swallows)
                expected.Add(k * 10_000L);
            swallows = false;
        }

        Assert.Equal(expected, Lines.Decode(decoder, stream.ToArray(), 64, 1, 511).Select(r => r.Sum));
    }

    // Noise that could fit needs "W d.d kg" between two ends: 11 bytes, below 2^-70.
    [Fact]
    public void Random_bytes_are_never_a_line()
    {
        var bytes = new byte[2_000_000];
        new Random(20265).NextBytes(bytes);
        var decoder = new TextLineDecoder(Lines.Pattern(), LineEnd.ReturnOrFeed);
        Assert.Empty(Lines.Decode(decoder, bytes, 1, 64, 4096));
        Assert.InRange(decoder.Counters.RefusedLines, 10_000, 25_000);
    }

    // An exclusive-or misses 1 damage in 256 of the kind that spares its own digits; most damage breaks the pattern before that.
    [Fact]
    public void With_a_checksum_wrong_digits_do_not_pass()
    {
        var pattern = Lines.Pattern(@"W (?<load>\d+\.\d) kg\*(?<check>[0-9A-F]{2})", LineChecksum.Xor);
        var random = new Random(20266);
        var wrong = 0;
        for (var k = 0; k < 20_000; k++)
        {
            var text = $"W {random.Next(1000)}.{random.Next(10)} kg";
            var line = $"{text}*{text.Aggregate(0, (sum, letter) => sum ^ letter):X2}".ToCharArray();
            line[random.Next(line.Length)] ^= (char)(1 << random.Next(7));
            wrong += pattern.TryRead(new string(line), out _) ? 1 : 0;
        }

        Assert.Equal(0, wrong);
    }

    static readonly Gen<byte[]> Streams = Gen.OneOf(
        Gen.Int[0, 9999].Select(k => System.Text.Encoding.ASCII.GetBytes($"W {k / 10}.{k % 10} kg\r\n")),
        Gen.Byte.Array[0, 30],
        Gen.Const((byte)'z').Array[200, 600]).Array[1, 12].Select(pieces => pieces.SelectMany(piece => piece).ToArray());
}
