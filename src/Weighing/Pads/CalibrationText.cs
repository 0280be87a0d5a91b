using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace ScaleLink.Weighing.Pads;

/// <summary>
/// One calibration as canonical text: a line a field, fixed order, numbers by their shortest form that reads back the
/// same. Two calibrations are the same exactly when their texts are.
/// </summary>
static class CalibrationText
{
    /// <summary>The text.</summary>
    public static string Of(PadCalibration pad)
    {
        ArgumentNullException.ThrowIfNull(pad);
        var text = new StringBuilder("pad calibration, form 1\n");
        Line(text, "pad", pad.Pad);
        // The words of every hash that was ever written: they stay as they were.
        Line(text, "standing", pad.Standing == CalibrationStanding.Calibrated ? "Proved" : "Starting");
        Line(text, "time", pad.Time.UtcDateTime.ToString("O", CultureInfo.InvariantCulture));
        Line(text, "who", pad.Who);
        Line(text, "place", pad.Place.Name);
        Line(text, "gravity", pad.Place.GravityMps2, pad.Place.RelativeUncertainty);
        Line(text, "temperature", pad.TemperatureC);
        Line(text, "capacity", pad.CapacityKg, pad.CalibratedToKg);
        Line(text, "zero", pad.ZeroCounts, pad.ZeroUncertaintyCounts);
        Line(text, "curve", pad.SpanKgPerCount, pad.CurvatureKgPerCount2);
        Line(text, "scatter", pad.Repeatability);
        Line(text, "degrees of freedom", pad.RepeatabilityDegreesOfFreedom);
        Line(text, "masses together", pad.MassesTogether);
        Line(text, "masses apart", pad.MassesApart);
        Line(text, "trim", [.. pad.CellTrim.Select(t => (double?)t)]);
        Line(text, "errors", Errors(pad.Errors));
        return text.ToString();
    }

    /// <summary>SHA-256 of the text in UTF-8, lower case hexadecimal.</summary>
    public static string Hash(PadCalibration pad) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Of(pad))));

    static double?[] Errors(ErrorSources e) =>
    [
        e.ResolutionCounts, e.BuoyancyRelative, e.ZeroReturnKg, e.HysteresisKg, e.HysteresisAtKg, e.CurveFollowsWayUp ? 1 : 0,
        e.RepeatabilitySdKg, e.RepeatabilityDegreesOfFreedom, e.CreepRelative, e.LinearityKg, e.PositionRelative, e.SpanPerKelvin,
    ];

    static void Line(StringBuilder text, string name, CurveCovariance c) =>
        Line(text, name, c.SpanSpan, c.SpanCurvature, c.CurvatureCurvature);

    static void Line(StringBuilder text, string name, params ReadOnlySpan<double?> values)
    {
        text.Append(name).Append('=');
        foreach (var value in values)
            text.Append(value?.ToString("R", CultureInfo.InvariantCulture) ?? "none").Append(' ');
        text.Append('\n');
    }

    // A line break inside a name could pass for another field.
    static void Line(StringBuilder text, string name, string value) =>
        text.Append(name).Append('=').Append(value.Length).Append(':').Append(value).Append('\n');
}
