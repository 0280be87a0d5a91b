using System.Globalization;
using System.Text;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Pads;

/// <summary>
/// A sample as a line: <c>load 262.418 kg pitch 0.120 roll -0.034 temp 21.50*3F</c>. What is absent is left out; the two digits are the
/// exclusive-or of the characters before the star.
/// </summary>
static class TextLine
{
    public static byte[] Of(in SampleFrame sample, double kgPerCount)
    {
        long sum = 0;
        for (var cell = 0; cell < sample.Cells; cell++)
            sum += sample[cell];
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"load {sum * kgPerCount:0.000} kg");
        if (sample.PitchDegrees is { } pitch && sample.RollDegrees is { } roll)
            text.Append(CultureInfo.InvariantCulture, $" pitch {pitch:0.000} roll {roll:0.000}");
        if (sample.TemperatureCelsius is { } celsius)
            text.Append(CultureInfo.InvariantCulture, $" temp {celsius:0.00}");
        byte check = 0;
        for (var index = 0; index < text.Length; index++)
            check ^= (byte)text[index];
        return Encoding.ASCII.GetBytes(text.Append(CultureInfo.InvariantCulture, $"*{check:X2}\r\n").ToString());
    }
}
