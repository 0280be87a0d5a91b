using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

public class FuzzTests
{
    const int Total = 2_000_000;

    // Uniform bytes hold about 7 800 stretches between zeros. To pass, one needs its three check bytes (odds 2^-24), its length
    // byte, a known kind and the length and cells of that kind (2^-8 each): below 10^-9 for the whole campaign, so none.
    [Fact]
    public void Random_bytes_are_never_a_frame()
    {
        var decoder = new PadFrameDecoder();
        var bytes = new byte[Total];
        new Random(20260).NextBytes(bytes);

        Assert.Empty(Wire.Decode(decoder, bytes, [1, 64, 511, 4096]));
        Assert.Equal(0, decoder.Counters.UnknownKinds);
        Assert.InRange(decoder.Counters.BadFrames, 6_000, 9_000);
    }

    // Frames that are torn, joined, repeated and hit by noise: harder than noise, because most of their bytes are right. Each
    // frame tells its place in the stream, so a false one shows. Several damaged bytes pass the CRC with odds of 2^-16 at most, and
    // the length byte and the shape still have to fit: fewer than 0.4 expected of the 25 000 hits.
    [Fact]
    public void Heavily_damaged_frames_are_refused_or_right()
    {
        var random = new Random(20261);
        var sent = new HashSet<string>();
        var stream = new List<byte>();
        while (stream.Count < Total)
        {
            var sample = new SampleFrame((uint)stream.Count, (uint)random.Next(), 0, 0.5, null, 20, [random.Next(), random.Next(256), 0, -5]);
            var frame = Frames.Bytes(to => PadFrameWriter.Write(sample, to));
            sent.Add(Convert.ToHexString(Frames.BodyOf(frame)));
            stream.AddRange(random.Next(2) == 0 ? frame : Damage(frame, random));
        }
        var decoder = new PadFrameDecoder();

        var delivered = Wire.Decode(decoder, stream.ToArray(), [4096, 100]);

        Assert.All(delivered, frame => Assert.Contains(frame.Body, sent));
        Assert.InRange(delivered.Count, sent.Count / 4, sent.Count);
        Assert.Equal(stream.Count, decoder.Counters.Bytes);
        Assert.True(decoder.Counters.BadFrames > sent.Count / 4);
    }

    static byte[] Damage(byte[] frame, Random random)
    {
        var at = random.Next(frame.Length);
        switch (random.Next(4))
        {
            case 0:
                return frame[..at];
            case 1:
                return [.. frame[..at], .. frame[random.Next(frame.Length)..]];
            case 2:
                return [.. frame[..at], .. Enumerable.Range(0, random.Next(1, 9)).Select(_ => (byte)random.Next(256)), .. frame[at..]];
            default:
                for (var hits = random.Next(2, 6); hits > 0; hits--)
                    frame[random.Next(frame.Length)] ^= (byte)random.Next(1, 256);
                return frame;
        }
    }
}
