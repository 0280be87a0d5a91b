using System.IO.Ports;
using System.Numerics;
using ScaleLink.Probing.Ports;

namespace ScaleLink.Probing.Recognition;

/// <summary>
/// Text sent with 7 data bits, as it looks to a port that takes 8: the parity bit, or a second stop bit, stands where the eighth bit would.
/// </summary>
internal static class SevenBitText
{
    // A line has a few bit errors; noise that is text by its low bits has every second parity wrong.
    private const double LeastFitting = 0.97;
    private const int Mark = 0x80;

    /// <summary>The text without that bit, and the format that explains it; nothing when the bytes are something else.</summary>
    public static (byte[] Text, CharacterFormat Format)? Of(byte[] heard)
    {
        byte[] text = [.. heard.Select(b => (byte)(b & ~Mark))];
        if (!TextRecognition.IsText(text) || !heard.Any(b => b >= Mark))
            return null;
        CharacterFormat? format =
            Fits(heard, b => (BitOperations.PopCount(b) & 1) == 0) ? new CharacterFormat(Parity.Even, 7)
            : Fits(heard, b => (BitOperations.PopCount(b) & 1) == 1) ? new CharacterFormat(Parity.Odd, 7)
            : Fits(heard, b => b >= Mark) ? new CharacterFormat(Parity.None, 7, 2)
            : null;
        return format is null ? null : (text, format);
    }

    private static bool Fits(byte[] heard, Func<byte, bool> rule) => heard.Count(rule) >= LeastFitting * heard.Length;
}
