using System.Text.Json;
using CsCheck;
using ScaleLink.Protocol.Framing;
using Shared;

namespace ScaleLink.Protocol.Tests.Framing;

public class CobsTests
{
    // Half of the bytes are zeros or runs long enough to reach the special case of 254.
    static readonly Gen<byte[]> Blocks = Gen.OneOf(
        Gen.Byte.Array[0, 60],
        Gen.Frequency((1, Gen.Const((byte)0)), (300, Gen.Byte[1, 255])).Array[200, 900]);

    static JsonElement Reference(string section)
    {
        using var document = JsonDocument.Parse(RepositoryRoot.Read("tests", "reference", "cobs-vectors.json"));
        return document.RootElement.GetProperty(section).Clone();
    }

    // Source: S. Cheshire, M. Baker 1999, vectors of the cobs-python test suite, in tests/reference/cobs-vectors.json.
    [Fact]
    public void Encodes_and_decodes_the_published_vectors()
    {
        var vectors = Reference("vectors").GetProperty("list").EnumerateArray().ToArray();
        Assert.NotEmpty(vectors);
        foreach (var vector in vectors)
        {
            var raw = Hex.Bytes(vector.GetProperty("raw").GetString()!);
            var encoded = Hex.Bytes(vector.GetProperty("cobs").GetString()!);
            Assert.Equal(Hex.Text(encoded), Hex.Text(Encode(raw)));
            Assert.Equal(Hex.Text(raw), Hex.Text(Decode(encoded)!));
        }
    }

    // Same source. The paper's own example is quoted from memory.
    [Fact]
    public void Encodes_the_paper_s_example_and_refuses_what_must_not_decode()
    {
        var example = Reference("paper_example");
        Assert.Equal(
            Hex.Text(Hex.Bytes(example.GetProperty("cobs").GetString()!)),
            Hex.Text(Encode(Hex.Bytes(example.GetProperty("raw").GetString()!))));

        var refused = Reference("must_fail_to_decode").GetProperty("list").EnumerateArray().ToArray();
        Assert.NotEmpty(refused);
        Assert.All(refused, bytes => Assert.Null(Decode(Hex.Bytes(bytes.GetString()!))));
        Assert.Null(Decode([]));
    }

    [Fact]
    public void Any_block_comes_back_and_its_code_holds_no_zero() =>
        Seeded.Check(Blocks, 2000, block =>
        {
            var encoded = Encode(block);
            Assert.DoesNotContain((byte)0, encoded);
            Assert.InRange(encoded.Length, block.Length + 1, Cobs.MaxEncodedLength(block.Length));
            Assert.Equal(block, Decode(encoded));
        });

    [Fact]
    public void Reaches_its_longest_length_on_blocks_without_zeros()
    {
        foreach (var length in new[] { 0, 1, 253, 254, 255, 507, 508, 509 })
            Assert.Equal(Cobs.MaxEncodedLength(length), Encode(Enumerable.Repeat((byte)7, length).ToArray()).Length);
    }

    [Fact]
    public void Refuses_a_destination_that_is_one_byte_short() =>
        Seeded.Check(Blocks, 500, block =>
        {
            var encoded = Encode(block);
            Assert.Throws<ArgumentException>(() => Cobs.Encode(block, new byte[encoded.Length - 1]));
            if (block.Length > 0)
                Assert.False(Cobs.TryDecode(encoded, new byte[block.Length - 1], out _));
            Assert.True(Cobs.TryDecode(encoded, new byte[block.Length], out _));
        });

    static byte[] Encode(byte[] block)
    {
        var encoded = new byte[Cobs.MaxEncodedLength(block.Length)];
        return encoded[..Cobs.Encode(block, encoded)];
    }

    static byte[]? Decode(byte[] encoded)
    {
        var block = new byte[encoded.Length];
        return Cobs.TryDecode(encoded, block, out var length) ? block[..length] : null;
    }
}
