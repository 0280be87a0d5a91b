using System.Globalization;
using System.Text;
using ScaleLink.Daemon.Reports;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Work;

/// <summary>The readings of a session as CSV (RFC 4180): a head of lines that begin with #, a header, one line a reading, a point as decimal sign, UTC.</summary>
public static class SessionCsv
{
    private const string Header =
        "number,time,who,counts,turns_lf,turns_rf,turns_lr,turns_rr,load_lf_kg,load_rf_kg,load_lr_kg,load_rr_kg,u_lf_kg,u_rf_kg,u_lr_kg,u_rr_kg,total_kg,"
        + "cross_weight_percent,u_cross_weight_percent,predicted_cross_weight_percent,u_predicted_percent,front_share_percent,left_share_percent,"
        + "height_lf_mm,height_rf_mm,height_lr_mm,height_rr_mm,patch_corrections,findings,note";

    /// <summary>The table.</summary>
    public static string Of(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var text = new StringBuilder();
        foreach (var line in Head(session))
            text.Append("# ").Append(CsvText.Harmless(line)).Append("\r\n");
        text.Append(Header).Append("\r\n");
        foreach (var capture in session.Captures)
            text.AppendJoin(',', Fields(capture).Select(Quoted)).Append("\r\n");
        return text.ToString();
    }

    // For people: the same words and digits as on every other face.
    private static IEnumerable<string> Head(WorkSession session)
    {
        yield return $"{session.Car.Name}, bay {session.Start.Bay}";
        if (Standing.Of(session) is { } standing)
            yield return $"cross weight = (RF + LR) / total; {standing.Words}";
        if (session.Captures is not [.., var last])
            yield break;
        var whole = last.Step.Reading.Whole;
        yield return $"last reading: cross weight {ValueText.Of(whole.CrossWeightPercent, Unit.Percent).Full}, total {ValueText.Of(whole.TotalKg, Unit.Kilogram).Full}";
    }

    private static IEnumerable<string> Fields(SessionCapture capture)
    {
        var whole = capture.Step.Reading.Whole;
        var u = whole.Covariance.DiagonalPart.Map(Math.Sqrt);
        var predicted = capture.Adjustment?.Predicted?.CrossWeightPercent;
        return
        [
            $"{capture.Number}", capture.At.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture), capture.Who, capture.Counts ? "yes" : "no",
            .. Four(capture.Adjustment?.Turns ?? default(Corners), "0.###"), .. Four(whole.Loads, "0.###"), .. Four(u, "0.####"),
            Show(whole.TotalKg.Estimate, "0.###"), Show(whole.CrossWeightPercent.Estimate, "0.####"), Show(whole.CrossWeightPercent.StandardUncertainty, "0.#####"),
            Show(predicted?.Estimate, "0.####"), Show(predicted?.StandardUncertainty, "0.#####"),
            Show(whole.FrontSharePercent.Estimate, "0.####"), Show(whole.LeftSharePercent.Estimate, "0.####"),
            .. Four(capture.Step.HeightsMm, "0.##"),
            string.Join("; ", capture.Step.Reading.Patch.Select(p => p.Words)),
            string.Join(" ", capture.Step.Findings.Select(f => f.Code)), string.Join("; ", new[] { capture.Step.Note, capture.ChangeName }.Where(n => n.Length > 0)),
        ];
    }

    private static IEnumerable<string> Four(Corners? values, string format) => Corners.All.ToArray().Select(c => Show(values?[c], format));

    private static string Show(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";

    // A number may begin with its sign.
    private static string Quoted(string field)
    {
        var plain = double.TryParse(field, CultureInfo.InvariantCulture, out _) ? field : CsvText.Harmless(field);
        return plain.AsSpan().IndexOfAny(",\"\r\n") < 0 ? plain : CsvText.Quoted(plain);
    }
}
