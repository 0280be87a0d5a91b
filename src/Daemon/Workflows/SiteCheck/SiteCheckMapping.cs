using ScaleLink.Daemon.Contract;
using ScaleLink.Weighing.SiteCheck;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.SiteCheck;

/// <summary>The site check in the words of the public API.</summary>
internal static class SiteCheckMapping
{
    private const string Caution =
        "Weigh on no slope on which the car may roll: chock the wheels that are not on a pad, and all four before anybody works. Nobody under a car on its pads or on a jack; pads on firm, flat boards, no load beyond a pad's capacity.";

    public static Wire.SiteCheckView View(SiteCheckState state) => new() { Now = Now(state.Now), Last = Last(state.Last), Caution = Caution };

    private static Wire.SiteCheckProgress? Now(SiteCheckProgress? now) => now is null ? null : new()
    {
        StartedAt = now.Record.StartedAt.ToWire(), Who = now.Record.Who, Minutes = now.Record.Minutes, ElapsedS = now.Seconds, SoFar = Report(now.SoFar),
    };

    private static Wire.SiteCheckRecord? Last(SiteCheckRecord? last) => last is null ? null : new()
    {
        StartedAt = last.StartedAt.ToWire(), Who = last.Who, Minutes = last.Minutes, Ending = (Wire.SiteCheckEnding)(int)last.Ending, EndedAt = last.EndedAt?.ToWire(),
        Report = Report(last.Report), Why = last.Why?.ToWire(), TotalKg = last.TotalKg, TotalIsGuessed = last.TotalIsGuessed,
    };

    private static Wire.SiteCheckReport? Report(SiteCheckReport? report)
    {
        if (report is null)
            return null;
        var wire = new Wire.SiteCheckReport
        {
            Verdict = (Wire.SiteCheckVerdict)((int)report.Verdict + 1), ZeroEveryMinutes = report.ZeroEveryMinutes, WantedPercent = report.WantedPercent,
            Seconds = report.Seconds, Statement = report.Statement, Drift = Drift(report.Drift),
        };
        if (report.ReadingPercent is { } reading)
            wire.ReadingPercent = reading;
        if (report.ChangePercent is { } change)
            wire.ChangePercent = change;
        wire.Parts.AddRange(report.Parts.Select(Part));
        wire.Pads.AddRange(report.Pads.Select(Pad));
        wire.Findings.AddRange(report.Findings.Select(f => f.ToWire()));
        return wire;
    }

    private static Wire.SiteCheckPart Part(SiteCheckPart part)
    {
        var wire = new Wire.SiteCheckPart { Kind = (Wire.SiteCheckPartKind)((int)part.Kind + 1), Words = part.Words, TypedWords = Wire.Sentence.Of(part.Words), Remedy = part.Remedy };
        if (part.Worst is { } worst)
            wire.Worst = worst.ToWire();
        if (part.ReadingPercent is { } reading)
            wire.ReadingPercent = reading;
        if (part.ChangePercent is { } change)
            wire.ChangePercent = change;
        return wire;
    }

    private static Wire.SiteCheckPad Pad(PadOutcome pad)
    {
        var wire = new Wire.SiteCheckPad { Corner = pad.Corner.ToWire(), DriftKgPer10Min = pad.DriftKgPer10Min.ToWire(), NoiseKg = pad.NoiseKg };
        Set(pad.TemperatureC, v => wire.TemperatureC = v);
        Set(pad.WarmedK, v => wire.WarmedK = v);
        Set(pad.UnlikeK, v => wire.UnlikeK = v);
        Set(pad.PitchDeg, v => wire.PitchDeg = v);
        Set(pad.RollDeg, v => wire.RollDeg = v);
        Set(pad.TiltChangeDeg, v => wire.TiltChangeDeg = v);
        Set(pad.KgPerKelvin, v => wire.KgPerKelvin = v);
        wire.Touches.AddRange(pad.Touches.Select(t => new Wire.SiteCheckTouch { FromS = t.FromSeconds, ToS = t.ToSeconds, PeakKg = t.PeakKg, ShiftKg = t.ShiftKg }));
        return wire;
    }

    private static Wire.SiteCheckDrift Drift(DriftEffect drift) => new()
    {
        CrossWeightPercent = drift.CrossWeightPercent.ToWire(), FrontKg = drift.FrontKg.ToWire(), RearKg = drift.RearKg.ToWire(), LeftKg = drift.LeftKg.ToWire(), RightKg = drift.RightKg.ToWire(),
    };

    private static void Set(double? value, Action<double> to)
    {
        if (value is { } known)
            to(known);
    }
}
