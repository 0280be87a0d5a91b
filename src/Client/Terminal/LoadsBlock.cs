using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Terminal;

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
            canvas.Put(FirstColumn, row + 2, $"total  {steady.Kg("total", total).Full(glyphs)}{Unproved(loads)}", Ink.Strong);
        if (loads is { FrontSharePercent: { } front, LeftSharePercent: { } left })
            canvas.Put(FirstColumn, row + 3, $"front {steady.Percent("front", front).Bare(glyphs)}, left {steady.Percent("left", left).Bare(glyphs)} %");
        if (loads is { FrontSideDifferenceKg: { } f, RearSideDifferenceKg: { } r })
            canvas.Put(FirstColumn, row + 4, $"L-R front {steady.Kg("left-right front", f, isSigned: true).Bare(glyphs)}, rear {steady.Kg("left-right rear", r, isSigned: true).Bare(glyphs)} kg");
        var patch = PatchWords.Of(loads);
        canvas.Put(FirstColumn, row + 5, patch, patch.Contains(PatchWords.Refused, StringComparison.Ordinal) ? Ink.Doubtful : Ink.Normal);
    }

    private static void DrawCorner(Canvas canvas, int column, int row, Loads loads, Corner corner, SteadyTexts steady, Glyphs glyphs)
    {
        var load = loads.Corners.FirstOrDefault(c => c.Corner == corner)?.LoadKg;
        var text = load is null ? "-" : steady.Kg(corner.Name(), load).Bare(glyphs);
        var ink = corner.IsOfCrossWeight() ? Ink.RightFrontPair : Ink.LeftFrontPair;
        canvas.Put(column, row, $"{glyphs.Pair(corner)} {corner.Name()} {text}{(load is null ? "" : " kg")}", ink);
    }

    private static string Unproved(Loads loads)
    {
        var unproved = loads.Corners.Where(c => c.LoadKg is not null && !c.Proved).Select(c => c.Corner.Name()).ToList();
        return unproved.Count switch
        {
            0 => "",
            4 => "  UNPROVED: all pads",
            _ => $"  UNPROVED: {string.Join(" ", unproved)}",
        };
    }
}
