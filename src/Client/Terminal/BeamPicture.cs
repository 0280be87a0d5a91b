using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;

namespace ScaleLink.Client.Terminal;

/// <summary>The beam between the two diagonals. Its slope is what lies beside the target: level means on target.</summary>
internal static class BeamPicture
{
    private const int LabelRoom = 24;
    private const int Thickness = 2;

    public static void Draw(Canvas canvas, int row, int rows, Loads loads, BeamScale scale, Glyphs glyphs)
    {
        if (loads.CrossWeightPercent is not { } cross)
            return;
        var arm = Math.Max(6, canvas.Width / 2 - LabelRoom);
        var drop = Math.Clamp(scale.Tilt(cross.Estimate), -1, 1) * (rows * DotGrid.Down - Thickness - 1) / 2;
        var middle = (rows * DotGrid.Down - Thickness) / 2.0;
        if (glyphs.IsRich)
            DrawDots(canvas, (scale.Centre - arm, row), (arm, rows), middle, drop);
        else
            DrawSigns(canvas, (scale.Centre, row), arm, middle, drop, glyphs.ToleranceBar);
        canvas.Put(scale.Centre, row + rows / 2 + 1, glyphs.Pivot, Ink.Strong);
        var (left, right) = (row + RowOf(middle - drop), row + RowOf(middle + drop));
        canvas.PutBefore(scale.Centre - arm - 1, left, Label(loads, cross, isRight: false, glyphs), Ink.LeftFrontPair);
        canvas.Put(scale.Centre + arm + 2, right, Label(loads, cross, isRight: true, glyphs), Ink.RightFrontPair);
    }

    private static void DrawDots(Canvas canvas, (int Column, int Row) at, (int Arm, int Rows) size, double middle, double drop)
    {
        var columns = 2 * size.Arm + 1;
        var grid = new DotGrid(columns, size.Rows);
        for (var x = 0; x < columns * DotGrid.Across; x++)
        {
            var along = 2.0 * x / (columns * DotGrid.Across - 1) - 1;
            var y = (int)Math.Round(middle + along * drop);
            for (var i = 0; i < Thickness; i++)
                grid.Set(x, y + i);
        }

        grid.Draw(canvas, at.Column, at.Row, x => InkOf(x - size.Arm));
    }

    private static void DrawSigns(Canvas canvas, (int Centre, int Row) at, int arm, double middle, double drop, char sign)
    {
        for (var x = -arm; x <= arm; x++)
            canvas.Put(at.Centre + x, at.Row + RowOf(middle + drop * x / arm), sign, InkOf(x));
    }

    private static int RowOf(double dots) => (int)Math.Floor((dots + Thickness / 2.0) / DotGrid.Down);

    private static Ink InkOf(int fromCentre) => fromCentre switch
    {
        < 0 => Ink.LeftFrontPair,
        > 0 => Ink.RightFrontPair,
        _ => Ink.Strong,
    };

    private static string Label(Loads loads, MeasuredValue cross, bool isRight, Glyphs glyphs)
    {
        var name = isRight ? $"{glyphs.RightFrontPair} RF+LR" : $"{glyphs.LeftFrontPair} LF+RR";
        return loads.DiagonalKg(isRight) is { } load ? $"{name} {glyphs.Say(ValueText.Live(load, glyphs.Units.Mass).Alone)} {glyphs.MassSign()}" : name;
    }
}
