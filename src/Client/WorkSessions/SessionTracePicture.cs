using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.WorkSessions;

/// <summary>The convergence trace of a session: a solid sign for what was read, a hollow one for what had been predicted, the target as a line.</summary>
internal static class SessionTracePicture
{
    private const int AxisRoom = 7;
    private const int MostPitch = 6;
    private const int LeastPitch = 3;

    public static void Draw(Canvas canvas, (int Column, int Row) at, (int Width, int Height) size, Session session, Glyphs glyphs)
    {
        var points = session.Trace.TakeLast((size.Width - AxisRoom) / LeastPitch - 1).ToList();
        var next = session.OpenPrediction?.CrossWeightPercent ?? (session.Plan is { AlreadyThere: false } plan ? plan.Predicted?.CrossWeightPercent : null);
        double[] values = [.. points.Select(p => p.CrossWeightPercent), .. points.Where(p => p.PredictedPercent is not null).Select(p => p.PredictedPercent.Estimate),
            session.TargetCrossWeightPercent, .. next is null ? Array.Empty<double>() : [next.Estimate]];
        var (low, high, rows) = (values.Min(), values.Max(), size.Height - 1);
        int RowOf(double percent) => high > low ? at.Row + (int)Math.Round((high - percent) / (high - low) * (rows - 1)) : at.Row;
        foreach (var value in new[] { low, high, session.TargetCrossWeightPercent })
            canvas.PutBefore(at.Column + AxisRoom - 1, RowOf(value), $"{value:0.00} ", Ink.Faint);
        for (var x = at.Column + AxisRoom; x < at.Column + size.Width; x++)
            canvas.Put(x, RowOf(session.TargetCrossWeightPercent), glyphs.Rule, Ink.Good);
        var pitch = Math.Clamp((size.Width - AxisRoom) / (points.Count + 1), LeastPitch, MostPitch);
        for (var i = 0; i < points.Count; i++)
        {
            var x = at.Column + AxisRoom + i * pitch;
            if (points[i].PredictedPercent is { } predicted)
                canvas.Put(x, RowOf(predicted.Estimate), glyphs.Predicted);
            canvas.Put(x, RowOf(points[i].CrossWeightPercent), glyphs.Step, Ink.Strong);
            canvas.Put(x, at.Row + rows, $"{points[i].Number}", Ink.Faint);
        }

        if (next is not null)
            canvas.Put(at.Column + AxisRoom + points.Count * pitch, RowOf(next.Estimate), glyphs.Predicted, Ink.Strong);
    }
}
