using System.Globalization;
using System.Text;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Pads;

/// <summary>
/// A sample as a line: <c>load 262.418 kg pitch 0.120 roll -0.034 temp 21.50*3F</c>. What is absent is left out; the two digits are the
/// exclusive-or of the characters before the star. With several numbers: <c>ST 02 G  262.418 kg T    1.500 kg</c>, the state, the number of the
/// device, gross and tare; US stands for a moving load, OL for one beyond the range.
/// </summary>
sealed class TextLine(TextStyle style, int device)
{
    const double TareKg = 1.5;
    const double MovingKg = 3;

    double? _before;

    public byte[] Of(in SampleFrame sample, double kgPerCount)
    {
        long sum = 0;
        for (var cell = 0; cell < sample.Cells; cell++)
            sum += sample[cell];
        var kg = sum * kgPerCount;
        var text = style.HasFlag(TextStyle.Several) ? Several(kg, (sample.Status & PadStatus.AnyCellAtLimit) != 0) : Usual(sample, kg);
        _before = kg;
        return Encoding.ASCII.GetBytes(style.HasFlag(TextStyle.StxEtx) ? $"\u0002{text}\u0003" : style.HasFlag(TextStyle.Return) ? $"{text}\r" : $"{text}\r\n");
    }

    string Several(double kg, bool isOver)
    {
        var state = isOver ? "OL" : _before is { } before && Math.Abs(kg - before) > MovingKg ? "US" : "ST";
        return string.Create(CultureInfo.InvariantCulture, $"{state} {device:00} G {kg,8:0.000} kg T {TareKg,8:0.000} kg");
    }

    static string Usual(in SampleFrame sample, double kg)
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"load {kg:0.000} kg");
        if (sample.PitchDegrees is { } pitch && sample.RollDegrees is { } roll)
            text.Append(CultureInfo.InvariantCulture, $" pitch {pitch:0.000} roll {roll:0.000}");
        if (sample.TemperatureCelsius is { } celsius)
            text.Append(CultureInfo.InvariantCulture, $" temp {celsius:0.00}");
        byte check = 0;
        for (var index = 0; index < text.Length; index++)
            check ^= (byte)text[index];
        return text.Append(CultureInfo.InvariantCulture, $"*{check:X2}").ToString();
    }
}
