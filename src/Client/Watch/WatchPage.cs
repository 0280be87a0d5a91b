using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Terminal;

namespace ScaleLink.Client.Watch;

/// <summary>The live picture: large number and verdict, the beam under its scale, loads and trace, the pads' health.</summary>
internal static class WatchPage
{
    // Less, and what stands beside the number would be cut off.
    private const int LeastWidth = 76;
    private const int LeastRows = 24;
    private const int BeamRows = 5;
    private const int MostBeamRows = 11;
    private const int LoadsRows = 6;
    private const int HealthRows = 3;
    private const int PanelColumn = 42;
    private const int PanelBesideWord = 50;

    public static Canvas Draw(WatchScene scene, (int Width, int Height) size, Glyphs glyphs)
    {
        if (size.Width < LeastWidth)
            return NarrowPage.Draw(scene, size, glyphs);
        var canvas = new Canvas(size.Width, size.Height);
        var loads = scene.Loads.Message;
        var extra = Math.Max(0, size.Height - LeastRows);
        var beamRows = Math.Min(MostBeamRows, BeamRows + extra / 2 / 2 * 2);
        var beam = 1 + BigText.Rows + ScalePicture.Rows;
        var lower = beam + beamRows;
        var foot = size.Height - 1;
        if (loads is not null)
            DrawReading(canvas, scene, loads, (beam, beamRows, lower), glyphs);
        if (scene.Loads.Freshness != Freshness.Live)
            canvas.Fade();
        canvas.Put(NumberBlock.DrawHeader(canvas, scene) + 2, 0, $"cross weight = (RF + LR) / total, {glyphs.PlusMinus} is U at 95 %", Ink.Faint);
        var end = NumberBlock.Draw(canvas, 1, scene, glyphs);
        StatusPanel.Draw(canvas, end > PanelColumn ? PanelBesideWord : PanelColumn, 1, scene, glyphs);
        HealthBlock.Draw(canvas, foot - HealthRows, HealthRows, scene, glyphs);
        canvas.Put(1, foot, scene.Foot, Ink.Faint);
        return canvas;
    }

    private static void DrawReading(Canvas canvas, WatchScene scene, Loads loads, (int Beam, int BeamRows, int Lower) rows, Glyphs glyphs)
    {
        if (loads.CrossWeightPercent is not null)
        {
            var scale = BeamScale.For(loads, canvas.Width);
            ScalePicture.Draw(canvas, rows.Beam - ScalePicture.Rows, loads, scale, scene.Steady, glyphs);
            BeamPicture.Draw(canvas, rows.Beam, rows.BeamRows, loads, scale, glyphs);
        }

        else if (loads.Verdict == Verdict.Raised)
        {
            canvas.Put(1, rows.Beam, Cautions.Raised[0], Ink.Uncertain);
            canvas.Put(1, rows.Beam + 1, Cautions.Raised[1], Ink.Uncertain);
        }

        LoadsBlock.Draw(canvas, rows.Lower, loads, scene.Steady, glyphs);
        var room = (canvas.Width - LoadsBlock.Width - 1, canvas.Height - 1 - HealthRows - rows.Lower);
        TracePicture.Draw(canvas, (LoadsBlock.Width, rows.Lower), (room.Item1, Math.Max(LoadsRows, room.Item2)), scene.Trace, loads.Target, glyphs);
    }
}
