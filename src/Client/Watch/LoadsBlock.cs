using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Watch;

/// <summary>The four loads as the car stands, front above rear, and what follows from them.</summary>
internal static class LoadsBlock
{
    public const int Width = 45;
    private const int FirstColumn = 1;
    private const int SecondColumn = 23;

    public static void Draw(Canvas canvas, int row, Loads loads, SteadyTexts steady, Glyphs glyphs)
    {
        DrawCorner(canvas, FirstColumn, row, loads, Corner.Lf, steady, glyphs);
        DrawCorner(canvas, SecondColumn, row, loads, Corner.Rf, steady, glyphs);
        DrawCorner(canvas, FirstColumn, row + 1, loads, Corner.Lr, steady, glyphs);
        DrawCorner(canvas, SecondColumn, row + 1, loads, Corner.Rr, steady, glyphs);
        if (loads.TotalKg is { } total)
            canvas.Put(FirstColumn, row + 2, $"total  {steady.Kg("total", total, glyphs).Full(glyphs)}{NominalOnly(loads)}", Ink.Strong);
        if (loads is { FrontWeightPercent: { } front, LeftSideWeightPercent: { } left })
            canvas.Put(FirstColumn, row + 3, $"front {steady.Percent("front", front).Bare(glyphs)}, left {steady.Percent("left", left).Bare(glyphs)} %");
        if (loads is { FrontLeftRightDifferenceKg: { } f, RearLeftRightDifferenceKg: { } r })
            canvas.Put(FirstColumn, row + 4, $"L-R front {steady.Kg("left-right front", f, glyphs, isSigned: true).Bare(glyphs)}, rear {steady.Kg("left-right rear", r, glyphs, isSigned: true).Bare(glyphs)} {glyphs.MassSign()}");
        var patch = PatchWords.Of(loads, glyphs);
        canvas.Put(FirstColumn, row + 5, patch, patch.Contains(PatchWords.Refused, StringComparison.Ordinal) ? Ink.Uncertain : Ink.Normal);
    }

    private static void DrawCorner(Canvas canvas, int column, int row, Loads loads, Corner corner, SteadyTexts steady, Glyphs glyphs)
    {
        var load = loads.Corners.FirstOrDefault(c => c.Corner == corner)?.LoadKg;
        var text = load is null ? "-" : steady.Kg(corner.Name(), load, glyphs).Bare(glyphs);
        var ink = corner.IsOfCrossWeight() ? Ink.RightFrontPair : Ink.LeftFrontPair;
        canvas.Put(column, row, $"{glyphs.Pair(corner)} {corner.Name()} {text}{(load is null ? "" : $" {glyphs.MassSign()}")}", ink);
    }

    internal static string NominalOnly(Loads loads)
    {
        var nominalOnly = loads.Corners.Where(c => c.LoadKg is not null && !c.Calibrated).Select(c => c.Corner.Name()).ToList();
        return nominalOnly.Count switch
        {
            0 => "",
            4 => "  NOMINAL ONLY: all pads",
            _ => $"  NOMINAL ONLY: {string.Join(" ", nominalOnly)}",
        };
    }
}
