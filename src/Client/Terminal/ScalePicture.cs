using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.Terminal;

/// <summary>The lens above the beam: marks, tolerance, the notch at the target, and the hand at the value, or an arrow where that lies beside it.</summary>
internal static class ScalePicture
{
    public const int Rows = 3;

    public static void Draw(Canvas canvas, int row, Loads loads, BeamScale scale, SteadyTexts steady, Glyphs glyphs)
    {
        DrawScale(canvas, row, scale, glyphs);
        if (loads.Target is { } target)
            DrawTarget(canvas, row + 1, target, scale.Notch(loads), scale, glyphs);
        if (loads.CrossWeightPercent is { } cross)
            DrawHand(canvas, row + 2, (cross.Estimate, steady.Percent("cross weight", cross)), scale, glyphs);
    }

    private static void DrawScale(Canvas canvas, int row, BeamScale scale, Glyphs glyphs)
    {
        for (var column = scale.Centre - scale.HalfWidth; column <= scale.Centre + scale.HalfWidth; column++)
            canvas.Put(column, row + 1, glyphs.Rule, Ink.Faint);
        foreach (var mark in scale.Marks)
        {
            var label = mark.ToString("0.0#");
            canvas.Put(scale.ColumnOf(mark), row + 1, glyphs.Tick, Ink.Faint);
            canvas.Put(scale.ColumnOf(mark) - label.Length / 2, row, label, Ink.Faint);
        }
    }

    private static void DrawTarget(Canvas canvas, int row, Target target, (int First, int Last)? notch, BeamScale scale, Glyphs glyphs)
    {
        var (low, high) = (scale.ColumnOf(target.CrossWeightPercent - target.TolerancePercent), scale.ColumnOf(target.CrossWeightPercent + target.TolerancePercent));
        for (var column = low; column <= high; column++)
            canvas.Put(column, row, glyphs.ToleranceBar, Ink.Good);
        if (notch is not var (first, last))
        {
            // Nothing is claimed: a mark where the target is, and no width.
            canvas.Put(scale.ColumnOf(target.CrossWeightPercent), row, glyphs.Upright, Ink.Strong);
            return;
        }

        for (var column = first; column <= last; column++)
            canvas.Put(column, row, ' ');
        canvas.Put(first - 1, row, glyphs.NotchLeft, Ink.Strong);
        canvas.Put(last + 1, row, glyphs.NotchRight, Ink.Strong);
    }

    private static void DrawHand(Canvas canvas, int row, (double Percent, ValueText Text) cross, BeamScale scale, Glyphs glyphs)
    {
        var (column, text) = (scale.ColumnOf(cross.Percent), cross.Text.Full(glyphs));
        var ink = cross.Text.IsRough ? Ink.Normal : Ink.Strong;
        canvas.Put(column, row, scale.Beyond(cross.Percent) switch { < 0 => glyphs.BeyondLeft, > 0 => glyphs.BeyondRight, _ => glyphs.Hand }, ink);
        if (column + 2 + text.Length < canvas.Width)
            canvas.Put(column + 2, row, text, ink);
        else
            canvas.PutBefore(column - 1, row, text, ink);
    }
}
