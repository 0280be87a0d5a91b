using System.Globalization;
using System.Text;
using ScaleLink.Daemon.Reports;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Measure;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Export;

/// <summary>The readings of a session as CSV (RFC 4180): a head of lines that begin with #, a header, one line a reading, a point as decimal sign, UTC.</summary>
internal static class SessionCsv
{
    private const string Header =
        "number,time,who,counts,turns_lf,turns_rf,turns_lr,turns_rr,load_lf_kg,load_rf_kg,load_lr_kg,load_rr_kg,u_lf_kg,u_rf_kg,u_lr_kg,u_rr_kg,total_kg,"
        + "cross_weight_percent,u_cross_weight_percent,predicted_cross_weight_percent,u_predicted_percent,front_weight_percent,left_side_weight_percent,"
        + "height_lf_mm,height_rf_mm,height_lr_mm,height_rr_mm,patch_corrections,findings,note";

    /// <summary>The table.</summary>
    public static string Of(WorkSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var text = new StringBuilder();
        foreach (var line in Head(session))
            text.Append("# ").Append(CsvText.Harmless(line)).Append("\r\n");
        text.Append(Header).Append("\r\n");
        foreach (var weighing in session.Weighings)
            text.AppendJoin(',', Fields(weighing).Select(Quoted)).Append("\r\n");
        return text.ToString();
    }

    // For people: the same words and digits as on every other face.
    private static IEnumerable<string> Head(WorkSession session)
    {
        yield return $"{session.Car.Name}, bay {session.Start.Bay}";
        if (Standing.Of(session) is { } standing)
            yield return $"cross weight = (RF + LR) / total; {standing.Words}";
        if (session.Weighings is not [.., var last])
            yield break;
        var whole = last.Step.Reading.Whole;
        yield return $"last reading: cross weight {ValueText.Of(whole.CrossWeightPercent, Unit.Percent).Full}, total {ValueText.Of(whole.TotalKg, Unit.Kilogram).Full}";
    }

    private static IEnumerable<string> Fields(SessionWeighing weighing)
    {
        var whole = weighing.Step.Reading.Whole;
        var u = whole.Covariance.DiagonalPart.Map(Math.Sqrt);
        var predicted = weighing.Adjustment?.Predicted?.CrossWeightPercent;
        return
        [
            $"{weighing.Number}", weighing.At.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture), weighing.Who, weighing.Counts ? "yes" : "no",
            .. Four(weighing.Adjustment?.Turns ?? default(Corners), "0.###"), .. Four(whole.Loads, "0.###"), .. Four(u, "0.####"),
            Show(whole.TotalKg.Estimate, "0.###"), Show(whole.CrossWeightPercent.Estimate, "0.####"), Show(whole.CrossWeightPercent.StandardUncertainty, "0.#####"),
            Show(predicted?.Estimate, "0.####"), Show(predicted?.StandardUncertainty, "0.#####"),
            Show(whole.FrontWeightPercent.Estimate, "0.####"), Show(whole.LeftSideWeightPercent.Estimate, "0.####"),
            .. Four(weighing.Step.HeightsMm, "0.##"),
            string.Join("; ", weighing.Step.Reading.Patch.Select(p => p.Words)),
            string.Join(" ", weighing.Step.Findings.Select(f => f.Code)), string.Join("; ", new[] { weighing.Step.Note, weighing.ChangeName }.Where(n => n.Length > 0)),
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
