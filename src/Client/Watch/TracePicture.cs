using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Watch;

/// <summary>Cross weight by adjustment: how it comes towards the target.</summary>
internal static class TracePicture
{
    private const int AxisRoom = 7;
    private const int LeastPitch = 3;
    private const int MostPitch = 6;

    public static void Draw(Canvas canvas, (int Column, int Row) at, (int Width, int Height) size, StepTrace trace, Target? target, Glyphs glyphs)
    {
        canvas.Put(at.Column, at.Row, Title(trace), Ink.Faint);
        var (plotRows, top) = (size.Height - 2, at.Row + 1);
        var steps = trace.Steps.TakeLast((size.Width - AxisRoom) / LeastPitch - 1).ToList();
        if (plotRows < 2 || steps.Count == 0)
            return;
        var values = Values(steps, trace, target).ToList();
        var (low, high) = (values.Min(), values.Max());
        int RowOf(double percent) => high > low ? top + (int)Math.Round((high - percent) / (high - low) * (plotRows - 1)) : top;
        DrawAxis(canvas, at.Column, [low, high, .. target is null ? [] : new[] { target.CrossWeightPercent }], RowOf);
        if (target is not null)
            for (var x = at.Column + AxisRoom; x < at.Column + size.Width; x++)
                canvas.Put(x, RowOf(target.CrossWeightPercent), glyphs.Rule, Ink.Good);
        var pitch = Math.Clamp((size.Width - AxisRoom) / (steps.Count + 1), LeastPitch, MostPitch);
        for (var i = 0; i < steps.Count; i++)
        {
            var x = at.Column + AxisRoom + i * pitch;
            canvas.Put(x, RowOf(steps[i].CrossWeightPercent), glyphs.Step, Ink.Strong);
            canvas.Put(x, top + plotRows, $"{steps[i].Number}", Ink.Faint);
        }

        if (trace.Predicted is { } predicted)
            canvas.Put(at.Column + AxisRoom + steps.Count * pitch, RowOf(predicted), glyphs.Predicted, Ink.Strong);
    }

    private static IEnumerable<double> Values(IEnumerable<SettledStep> steps, StepTrace trace, Target? target)
    {
        foreach (var step in steps)
            yield return step.CrossWeightPercent;
        if (trace.Predicted is { } predicted)
            yield return predicted;
        if (target is not null)
            yield return target.CrossWeightPercent;
    }

    private static void DrawAxis(Canvas canvas, int column, IEnumerable<double> values, Func<double, int> rowOf)
    {
        foreach (var value in values)
            canvas.PutBefore(column + AxisRoom - 1, rowOf(value), $"{value:0.0} ", Ink.Faint);
    }

    private static string Title(StepTrace trace) => trace.Steps switch
    {
        [] => "cross weight by step: none settled yet",
        [.., { Label: { } label, Number: var number }] => $"by step, {number}: {label}",
        _ => "cross weight by step, %",
    };
}
