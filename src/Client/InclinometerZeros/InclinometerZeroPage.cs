using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.InclinometerZeros;

/// <summary>The zeros of the pads' inclinometers and the steps of a reversal test as lines.</summary>
internal static class InclinometerZeroPage
{
    /// <summary>How every pad stands.</summary>
    public static IEnumerable<string> All(ListInclinometerZerosResponse list, Glyphs glyphs)
    {
        foreach (var pad in list.Pads)
            foreach (var line in Pad(pad, glyphs))
                yield return line;
        yield return $"A pad that was never tested counts as {list.UntestedUncertaintyDeg:0.00}° off, one standard uncertainty. Test one: scalelink patch inclinometer-zero LF";
        foreach (var blind in list.CannotSee)
            yield return $"Not seen: {PeerText.Clean(blind, 200)}";
    }

    /// <summary>How one pad stands.</summary>
    public static IEnumerable<string> Pad(PadInclinometerZero pad, Glyphs glyphs)
    {
        yield return $"{Name(pad)} {Zero(pad.Zero, glyphs)}";
        if (pad.Readings.Count > 0)
            yield return $"  a test goes on: {pad.Readings.Count} of {pad.ReadingsNeeded} readings. Next: {Do(pad)}";
        if (pad.CutShort.Length > 0)
            yield return $"  {PeerText.Clean(pad.CutShort, 200)}";
    }

    /// <summary>The zero in words, in one line with others.</summary>
    public static string Zero(InclinometerZero? zero, Glyphs glyphs) => zero is null
        ? "inclinometer zero never tested"
        : $"inclinometer zero pitch {Angle(zero.PitchDeg, glyphs)}, roll {Angle(zero.RollDeg, glyphs)}, tested {zero.TestedAt.LocalMinute()} by {PeerText.Clean(zero.Who, 40)}";

    /// <summary>Before the first step.</summary>
    public static IEnumerable<string> Before(ListInclinometerZerosResponse list, PadInclinometerZero pad)
    {
        foreach (var caution in list.Cautions)
            yield return $"Caution: {PeerText.Clean(caution, 200)}";
        yield return $"The inclinometer zero of {Name(pad)}: {pad.ReadingsNeeded} readings, the pad the other way round at every other one.";
        if (pad.CutShort.Length > 0)
            yield return PeerText.Clean(pad.CutShort, 200);
        if (pad.Readings.Count > 0)
            yield return $"It goes on after reading {pad.Readings.Count}.";
    }

    /// <summary>What to do for the next reading.</summary>
    public static string Do(PadInclinometerZero pad) => $"{pad.NextNumber} of {pad.ReadingsNeeded}: " + pad.NextNumber switch
    {
        1 => "put the pad down empty on firm ground, mark its edges there, hands off.",
        _ when pad.NextTurned => "lift the pad, turn it by half a turn onto the same marks, front edge where the rear edge was, hands off.",
        _ => "lift the pad, turn it back onto the same marks, hands off.",
    };

    /// <summary>What was read.</summary>
    public static string Read(PadInclinometerZero now) => now.Readings is [.., var r]
        ? $"  read: pitch {r.PitchDeg:+0.000;-0.000;0.000}°, roll {r.RollDeg:+0.000;-0.000;0.000}°"
        : "  read: the readings agree.";

    private static string Name(PadInclinometerZero pad) => $"{pad.Corner.Name()} {(pad.SerialNumber.Length > 0 ? PeerText.Clean(pad.SerialNumber, 20) : "(no pad)")}";

    private static string Angle(MeasuredValue angle, Glyphs glyphs) => ValueText.Of(angle.AsValue, Unit.Degree, isSigned: true).Full(glyphs);
}
