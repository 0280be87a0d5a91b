using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace Daemon.Tests.Faces.Mqtt.Broker;

/// <summary>The length of an MQTT packet, from its fixed header in whatever pieces it comes.</summary>
public class PacketHeadersTests
{
    // Lengths and their bytes: MQTT 3.1.1, table 2.4 (MQTT 5.0, table 1-1 is the same).
    [Theory]
    [InlineData(127, new byte[] { 0x7F })]
    [InlineData(128, new byte[] { 0x80, 0x01 })]
    [InlineData(16_383, new byte[] { 0xFF, 0x7F })]
    [InlineData(16_384, new byte[] { 0x80, 0x80, 0x01 })]
    [InlineData(2_097_151, new byte[] { 0xFF, 0xFF, 0x7F })]
    [InlineData(268_435_455, new byte[] { 0xFF, 0xFF, 0xFF, 0x7F })]
    public void A_promise_is_read_as_the_standard_writes_it(int length, byte[] written)
    {
        byte[] header = [0x30, .. written];
        Assert.True(new PacketHeaders().Follow(header, header.Length + length));
        Assert.False(new PacketHeaders().Follow(header, header.Length + length - 1));
    }

    [Fact]
    public void Packets_are_followed_through_every_cut()
    {
        // Three that fit, one without a body among them, and one that does not.
        byte[] fits = [0x30, 0x05, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xC0, 0x00, 0x30, 0x82, 0x01, .. Enumerable.Repeat((byte)0xFF, 130), 0x30, 0xFF];
        for (var first = 0; first <= fits.Length; first++)
            for (var second = first; second <= fits.Length; second += 7)
            {
                var headers = new PacketHeaders();
                Assert.True(headers.Follow(fits.AsSpan(..first), 200) && headers.Follow(fits.AsSpan(first..second), 200) && headers.Follow(fits.AsSpan(second..), 200));
                Assert.False(headers.Follow([0x7F], 200));
            }
    }

    [Fact]
    public void A_length_that_goes_on_after_four_bytes_is_none() => Assert.False(new PacketHeaders().Follow([0x30, 0x80, 0x80, 0x80, 0x80], int.MaxValue));
}
