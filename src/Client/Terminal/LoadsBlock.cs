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

    public static void Draw(Canvas canvas, int row, Loads loads, Glyphs glyphs)
    {
        DrawCorner(canvas, FirstColumn, row, loads, Corner.Lf, glyphs);
        DrawCorner(canvas, SecondColumn, row, loads, Corner.Rf, glyphs);
        DrawCorner(canvas, FirstColumn, row + 1, loads, Corner.Lr, glyphs);
        DrawCorner(canvas, SecondColumn, row + 1, loads, Corner.Rr, glyphs);
        if (loads.TotalKg is { } total)
            canvas.Put(FirstColumn, row + 2, $"total  {Shown.LiveKg(total).Full(glyphs)}{Unproved(loads)}", Ink.Strong);
        if (loads is { FrontSharePercent: { } front, LeftSharePercent: { } left })
            canvas.Put(FirstColumn, row + 3, $"front {Shown.Percent(front).Bare(glyphs)}, left {Shown.Percent(left).Bare(glyphs)} %");
        if (loads is { FrontSideDifferenceKg: { } f, RearSideDifferenceKg: { } r })
            canvas.Put(FirstColumn, row + 4, $"L-R front {Side(f, glyphs)}, rear {Side(r, glyphs)} kg");
        var patch = PatchWords.Of(loads);
        canvas.Put(FirstColumn, row + 5, patch, patch.Contains(PatchWords.Refused, StringComparison.Ordinal) ? Ink.Doubtful : Ink.Normal);
    }

    private static void DrawCorner(Canvas canvas, int column, int row, Loads loads, Corner corner, Glyphs glyphs)
    {
        var load = loads.Corners.FirstOrDefault(c => c.Corner == corner)?.LoadKg;
        var text = load is null ? "-" : Shown.LiveKg(load).Bare(glyphs);
        var ink = corner is Corner.Rf or Corner.Lr ? Ink.RightFrontPair : Ink.LeftFrontPair;
        canvas.Put(column, row, $"{glyphs.Pair(corner)} {corner.Name()} {text}{(load is null ? "" : " kg")}", ink);
    }

    private static string Side(MeasuredValue difference, Glyphs glyphs) => Shown.LiveKg(difference, isSigned: true).Bare(glyphs);

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
