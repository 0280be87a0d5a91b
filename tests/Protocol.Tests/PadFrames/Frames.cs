using CsCheck;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames;

/// <summary>Frames of every kind, and their bytes.</summary>
static class Frames
{
    public delegate int Writer(Span<byte> destination);

    static readonly Gen<double?> Tilts = Gen.Int[-32767, 32767].Select(steps => steps / 1000.0).Nullable(0.2);
    static readonly Gen<double?> Temperatures = Gen.Int[-32767, 32767].Select(steps => steps / 100.0).Nullable(0.2);

    // Small numbers are full of zero bytes, which is where stuffing happens.
    static readonly Gen<int> Numbers = Gen.OneOf(Gen.Int, Gen.Int[-300, 300], Gen.OneOf(int.MinValue, int.MaxValue, 0));

    public static readonly Gen<SampleFrame> Samples =
        Gen.Select(
            Numbers, Numbers, Gen.Int[0, (int)PadStatus.Defined], Tilts, Tilts, Temperatures, Numbers.Array[1, 8],
            (sequence, time, status, pitch, roll, temperature, counts) =>
                new SampleFrame((uint)sequence, (uint)time, (PadStatus)status, pitch, roll, temperature, counts));

    static readonly Gen<(int Lowest, int Highest)> Limits = Gen.Select(Gen.Int, Gen.Int)
        .Where((a, b) => a != b).Select((a, b) => (Math.Min(a, b), Math.Max(a, b)));

    static Gen<string> Text(int shortest) => Gen.Char[' ', '~'].Array[shortest, 32].Select(characters => new string(characters));

    public static readonly Gen<HelloFrame> Hellos =
        Gen.Select(
            Numbers, Gen.Byte[1, 8], Gen.UInt[1, uint.MaxValue], Gen.UInt[1, uint.MaxValue], Limits, Gen.Byte[0, 7],
            Gen.Select(Text(1), Text(0)),
            (boot, cells, rate, capacity, limits, features, texts) => new HelloFrame
            {
                BootId = (uint)boot,
                Cells = cells,
                SampleRateMillihertz = rate,
                CapacityGrams = capacity,
                LowestCount = limits.Lowest,
                HighestCount = limits.Highest,
                Features = (PadFeatures)features,
                SerialNumber = texts.Item1,
                Firmware = texts.Item2,
            });

    public static readonly Gen<SettingFrame> Settings =
        Gen.Select(Gen.Byte, Gen.Byte, Numbers, (id, setting, value) => new SettingFrame(id, (PadSetting)setting, value));

    public static readonly Gen<AckFrame> Acks =
        Gen.Select(Gen.Byte, Gen.Byte, Numbers, (id, result, value) => new AckFrame(id, (AckResult)result, value));

    /// <summary>The bytes of frames of all kinds, most of them samples as in life.</summary>
    public static readonly Gen<byte[]> Any = Gen.Frequency(
        (6, Samples.Select(sample => Bytes(to => PadFrameWriter.Write(sample, to)))),
        (2, Hellos.Select(hello => Bytes(to => PadFrameWriter.Write(hello, to)))),
        (1, Settings.Select(setting => Bytes(to => PadFrameWriter.Write(setting, to)))),
        (1, Acks.Select(ack => Bytes(to => PadFrameWriter.Write(ack, to)))),
        (1, Gen.Const(0).Select(_ => Bytes(PadFrameWriter.WriteAskHello))));

    public static byte[] Bytes(Writer write)
    {
        var bytes = new byte[PadFrameWriter.MaxFrameLength];
        return bytes[..write(bytes)];
    }

    /// <summary>The one frame in the bytes, as the decoder delivers it.</summary>
    public static byte[] BodyOf(byte[] frame)
    {
        var delivered = Assert.Single(Wire.Decode(new PadFrameDecoder(), frame));
        return Hex.Bytes(delivered.Body);
    }

    public static int[] Counts(SampleFrame sample) => [.. Enumerable.Range(0, sample.Cells).Select(cell => sample[cell])];
}
