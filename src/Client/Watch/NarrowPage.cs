using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Watch;

/// <summary>The live picture where there is no room beside the number: verdict and loads one below the other, in 40 columns and more.</summary>
internal static class NarrowPage
{
    private const int StatusRows = 5, HealthRows = 3, RoomForIntervals = 52;

    public static Canvas Draw(WatchScene scene, (int Width, int Height) size, Glyphs glyphs)
    {
        var canvas = new Canvas(size.Width, size.Height);
        var row = 1 + BigText.Rows;
        var last = scene.Loads.Message is { } loads ? Loads(canvas, row + StatusRows, scene, loads, glyphs) : row + StatusRows;
        if (scene.Loads.Freshness != Freshness.Live)
            canvas.Fade();
        NumberBlock.DrawHeader(canvas, scene);
        NumberBlock.Draw(canvas, 1, scene, glyphs);
        StatusPanel.Draw(canvas, 1, row, scene, glyphs);
        var foot = size.Height - 1;
        if (Math.Min(HealthRows, foot - last) is > 0 and var rows)
        {
            HealthBlock.Draw(canvas, foot - rows, rows, scene, glyphs);
            canvas.Put(1, foot, PeerText.Clean(scene.Foot, size.Width - 2), Ink.Faint);
        }

        return canvas;
    }

    // Front above rear, left on the left; whole lines, so that a narrow one loses its end and nothing else. Gives the row behind them.
    private static int Loads(Canvas canvas, int row, WatchScene scene, Loads loads, Glyphs glyphs)
    {
        if (loads.Verdict == Verdict.Raised)
            return Raised(canvas, row);
        var half = canvas.Width / 2;
        foreach (var (k, corner) in ((Corner[])[Corner.Lf, Corner.Rf, Corner.Lr, Corner.Rr]).Index())
            canvas.Put(1 + k % 2 * half, row + k / 2, Load(loads, corner, scene.Steady, canvas.Width, glyphs), corner.IsOfCrossWeight() ? Ink.RightFrontPair : Ink.LeftFrontPair);
        row += 2;
        foreach (var line in Lines(loads, scene.Steady, glyphs).Where(l => l.Length > 0))
            canvas.Put(1, row++, PeerText.Clean(line, canvas.Width - 1), line.Contains(PatchWords.Refused, StringComparison.Ordinal) ? Ink.Uncertain : Ink.Normal);
        return row;
    }

    private static int Raised(Canvas canvas, int row)
    {
        foreach (var line in Cautions.Raised.SelectMany(c => TextWrap.Lines(c, canvas.Width - 2, 3)))
            canvas.Put(1, row++, line, Ink.Uncertain);
        return row;
    }

    private static IEnumerable<string> Lines(Loads loads, SteadyTexts steady, Glyphs glyphs)
    {
        if (loads.TotalKg is { } total)
            yield return $"total {steady.Kg("total", total, glyphs).Full(glyphs)}";
        yield return LoadsBlock.NominalOnly(loads).Trim();
        if (loads is { FrontWeightPercent: { } front, LeftSideWeightPercent: { } left })
            yield return $"front {steady.Percent("front", front).Bare(glyphs)}, left {steady.Percent("left", left).Bare(glyphs)} %";
        if (loads is { FrontLeftRightDifferenceKg: { } f, RearLeftRightDifferenceKg: { } r })
        {
            yield return $"L-R front {steady.Kg("left-right front", f, glyphs, isSigned: true).Full(glyphs)}";
            yield return $"L-R rear  {steady.Kg("left-right rear", r, glyphs, isSigned: true).Full(glyphs)}";
        }

        yield return PatchWords.Of(loads, glyphs);
        yield return $"(RF + LR) / total, {glyphs.PlusMinus} is U at 95 %";
    }

    private static string Load(Loads loads, Corner corner, SteadyTexts steady, int width, Glyphs glyphs)
    {
        var name = $"{glyphs.Pair(corner)} {corner.Name()}";
        if (loads.Corners.FirstOrDefault(c => c.Corner == corner)?.LoadKg is not { } load)
            return $"{name} -";
        var text = steady.Kg(corner.Name(), load, glyphs);
        return $"{name} {(width >= RoomForIntervals ? text.Bare(glyphs) : glyphs.Say(text.Alone))} {glyphs.MassSign()}";
    }
}
