using System.IO.Ports;
using System.Numerics;
using System.Runtime.Versioning;
using System.Text;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Search;
using ScaleLink.Probing.Toml;

namespace Probing.Tests.Recognition;

/// <summary>Indicators that send 7 data bits (common practice, no published source), heard by a port that takes 8.</summary>
[UnsupportedOSPlatform("windows")]
public class SevenBitTextTests
{
    private const string Lines = "  12.34 kg\r\n  12.36 kg\r\n  12.35 kg\r\n 112.35 kg\r\n  12.34 kg\r\n";

    [Theory]
    [InlineData(Parity.Even, 1)]
    [InlineData(Parity.Odd, 1)]
    [InlineData(Parity.None, 2)]
    public void The_bit_that_is_no_data_tells_the_format(Parity parity, int stopBits)
    {
        var (text, format) = SevenBitText.Of(Sent(parity))!.Value;
        Assert.Equal(Lines, Encoding.ASCII.GetString(text));
        Assert.Equal(new CharacterFormat(parity, 7, stopBits), format);
    }

    [Fact]
    public void Text_of_eight_bits_noise_and_silence_are_something_else()
    {
        Assert.Null(SevenBitText.Of(Encoding.ASCII.GetBytes(Lines)));
        Assert.Null(SevenBitText.Of([]));
        var chance = new Random(3);
        // Text by its low bits, and every second parity wrong.
        Assert.Null(SevenBitText.Of([.. Encoding.ASCII.GetBytes(Lines).Select(b => (byte)(b | chance.Next(2) << 7))]));
    }

    [Fact]
    public async Task The_block_for_the_bay_file_says_so()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var terminal = new SpeakingTerminal(Sent(Parity.Even));
        var search = new PortSearch(new SearchSettings { Listening = TimeSpan.FromSeconds(1) }, TimeProvider.System, new SystemTree());
        var finding = await search.Search([terminal.Path], null, TestContext.Current.CancellationToken).SingleAsync(TestContext.Current.CancellationToken);
        Assert.Contains("parity = \"even\"\ndata_bits = 7\nprotocol = \"text-lines\"", BayBlock.Of(finding, finding.Found[0], "LF"));
        Assert.Equal("7 data bits, even parity, 1 stop bit", finding.Format.Words);
    }

    private static byte[] Sent(Parity parity) => [.. Encoding.ASCII.GetBytes(Lines).Select(b => (byte)(b | (EighthBit(b, parity) ? 0x80 : 0)))];

    private static bool EighthBit(byte b, Parity parity) => parity switch
    {
        Parity.Even => BitOperations.PopCount(b) % 2 == 1,
        Parity.Odd => BitOperations.PopCount(b) % 2 == 0,
        _ => true,
    };
}
