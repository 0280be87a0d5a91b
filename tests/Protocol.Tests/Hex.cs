namespace ScaleLink.Protocol.Tests;

/// <summary>Bytes as people write them: pairs of digits with spaces between.</summary>
static class Hex
{
    public static byte[] Bytes(string text) => Convert.FromHexString(string.Concat(text.Where(c => !char.IsWhiteSpace(c))));

    public static string Text(ReadOnlySpan<byte> bytes) => string.Join(' ', bytes.ToArray().Select(b => b.ToString("X2")));
}
