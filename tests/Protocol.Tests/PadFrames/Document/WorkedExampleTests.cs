using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames.Document;

/// <summary>
/// The worked examples of docs/pad-frames.md, read from the page. Their bytes were made outside this library, with the CRC of
/// Python's standard library (binascii.crc_hqx, start 0xFFFF) and a COBS encoder that splits at the zeros.
/// </summary>
public class WorkedExampleTests
{
    [Fact]
    public void There_is_an_example_of_every_kind() =>
        Assert.Equal(
            ["acknowledgement", "ask-hello", "hello", "sample", "set", "unknown"],
            DocumentBlock.All("example").Select(NameOf).Distinct().Order());

    [Fact]
    public void The_encoder_makes_the_documented_frames() => Assert.All(DocumentBlock.All("example"), example =>
        Assert.Equal(Hex.Text(example.Bytes("frame")), Hex.Text(Encode(example))));

    [Fact]
    public void The_decoder_finds_the_documented_bodies() => Assert.All(DocumentBlock.All("example"), example =>
    {
        var decoder = new PadFrameDecoder();
        var delivered = Wire.Decode(decoder, example.Bytes("frame"));

        if (NameOf(example) == "unknown")
        {
            Assert.Empty(delivered);
            Assert.Equal(1, decoder.Counters.UnknownKinds);
        }
        else
            Assert.Equal(Convert.ToHexString(example.Bytes("body")), Assert.Single(delivered).Body);
    });

    [Fact]
    public void The_documented_refusals_are_refused_for_the_documented_reason() => Assert.All(DocumentBlock.All("refused"), refused =>
    {
        var decoder = new PadFrameDecoder();

        Assert.Empty(Wire.Decode(decoder, (byte[])[0, .. refused.Bytes("frame")]));
        Assert.Equal(NameOf(refused), Assert.Single(decoder.RecentSkips()).Reason.ToString());
    });

    static string NameOf(DocumentBlock block) => block.Label.Split(' ')[1];

    static byte[] Encode(DocumentBlock example) => Frames.Bytes(to => NameOf(example) switch
    {
        "sample" => PadFrameWriter.Write(Sample(example), to),
        "hello" => PadFrameWriter.Write(Hello(example), to),
        "ask-hello" => PadFrameWriter.WriteAskHello(to),
        "set" => PadFrameWriter.Write(
            new SettingFrame((byte)example.Number("request"), (PadSetting)example.Number("setting"), (int)example.Number("value")), to),
        "acknowledgement" => PadFrameWriter.Write(
            new AckFrame((byte)example.Number("request"), (AckResult)example.Number("result"), (int)example.Number("value")), to),
        _ => PadFrameWriter.WriteBody(example.Bytes("body"), to),
    });

    static SampleFrame Sample(DocumentBlock example) => new(
        (uint)example.Number("sequence"),
        (uint)example.Number("time"),
        (PadStatus)example.Number("status"),
        example.Optional("pitch"),
        example.Optional("roll"),
        example.Optional("temperature"),
        [.. example["counts"].Split(' ').Select(int.Parse)]);

    static HelloFrame Hello(DocumentBlock example) => new()
    {
        Version = (byte)example.Number("version"),
        BootId = (uint)example.Number("boot"),
        Cells = (byte)example.Number("cells"),
        SampleRateMillihertz = (uint)example.Number("rate"),
        CapacityGrams = (uint)example.Number("capacity"),
        LowestCount = (int)example.Number("lowest"),
        HighestCount = (int)example.Number("highest"),
        Features = (PadFeatures)example.Number("features"),
        SerialNumber = example["serial"],
        Firmware = example["firmware"],
    };
}
