using System.Globalization;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.Calibration;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.InclinometerZeros;
using ScaleLink.Daemon.Workflows.Levelling;
using ScaleLink.Daemon.Workflows.PadInterchange;
using ScaleLink.Daemon.Workflows.SiteCheck;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.Zeros;
using ScaleLink.Measure;

namespace Daemon.Tests.Journal;

/// <summary>
/// What a ledger says once everything that reads it has read it, a line for each thing, in words of the tests: names in code may change,
/// this may not.
/// </summary>
internal sealed class LedgerStory(LedgerDatabase ledger)
{
    private readonly List<string> _lines = [];

    /// <summary>The whole story.</summary>
    public static string Of(LedgerDatabase ledger)
    {
        var story = new LedgerStory(ledger);
        story.Zeros();
        story.Calibrations();
        story.Interchanges();
        story.Inclinometers();
        story.Noise();
        story.Bay();
        story.Sessions();
        return string.Join('\n', story._lines);
    }

    private void Zeros()
    {
        var zeros = new ZeroLedger(ledger);
        foreach (var pad in Subjects("zero"))
        {
            foreach (var z in zeros.History(pad))
                Say($"zero of {pad}: {Text(z.Counts)} counts, cells {string.Join(' ', (z.CellCounts ?? []).Select(c => Text(c)))}, {When(z.TakenAt)}, {z.Who}, shift {Text(z.ShiftKg)} kg, at {Text(z.TemperatureC)} °C, because {z.Because ?? "-"}");
            if (zeros.Latest(pad) is { } latest)
                Say($"zero of {pad} now: {When(latest.TakenAt)}, tracked {Text(zeros.TrackedKg(latest))} kg");
        }
    }

    private void Calibrations()
    {
        var calibrations = new CalibrationLedger(ledger);
        foreach (var a in calibrations.All())
            Say($"calibration of {a.Calibration.Pad}: {a.Calibration.Identity}, from {a.Procedure}, again {a.Again}, '{a.Note}', {a.Who}, {When(a.At)}, 10000 counts are {Text(a.Calibration.Kg(10000))} kg");
        foreach (var pad in Subjects("calibration"))
            Say($"in effect for {pad}: {calibrations.InEffect(pad)?.Identity}");
        foreach (var p in new ProcedureLedger(ledger).All())
            Say($"procedure {p.Id}: {p.SerialNumber} at {p.Corner}, {p.State}, {p.BegunBy}, {When(p.BegunAt)}, {p.Flow.Readings.Count} readings of {Text(p.Flow.Readings.Sum(r => p.Flow.Plan.Masses.Kg(r.Step.Load)))} kg in sum, {p.Flow.Skipped.Count} left out, "
                + $"last {When(p.LastReadAt)}, ended by {p.Flow.Ending?.Who ?? "-"} because '{p.Flow.Ending?.Reason}', made {p.Calibration?.Calibration.Identity ?? "-"}");
    }

    private void Interchanges()
    {
        foreach (var r in Subjects("rotation").SelectMany(bay => new InterchangeLedger(ledger, bay).All()))
        {
            Say($"interchange {r.Id}: {r.BegunBy}, {When(r.BegunAt)}, {r.Flow.Taken.Count} weighings, ended by {r.Ending?.Who ?? "-"} {When(r.Ending?.At)} '{r.Ending?.Remark}'");
            foreach (var w in r.Flow.Taken)
                Say($"  {When(w.Time)}: {string.Join(", ", w.Pads.Select(p => $"{p.Pad} {Text(p.LoadKg)} kg"))}");
            if (r.Ending?.Result is { } result)
                Say($"  gains {string.Join(", ", result.Gains.Select(g => $"{g.Pad} {Text(g.Relative)} ± {Text(g.StandardUncertainty)}"))}; loads {Text(result.LoadsKg)}; residual {Text(result.ResidualSdKg)} with {result.DegreesOfFreedom}");
        }
    }

    private void Inclinometers()
    {
        var tilts = new InclinometerZeroLedger(ledger);
        foreach (var pad in Subjects("lean-zero"))
        {
            var (zero, test) = (tilts.Of(pad).Zero, tilts.Of(pad).Test);
            Say($"inclinometer of {pad}: {(zero is null ? "no zero" : $"pitch {Text(zero.Zero.PitchDeg)}, roll {Text(zero.Zero.RollDeg)}, u {Text(zero.Zero.StandardUncertaintyDeg)}, {zero.Who}, {When(zero.At)}, of {zero.Source}, {Text(zero.TemperatureC)} °C")}; "
                + (test is null ? "no test goes on" : $"a test at {test.Corner} with {test.Test.Readings.Count} readings goes on"));
        }
    }

    private void Noise()
    {
        foreach (var bay in Subjects("noise"))
            Say($"noise of {bay}: {(new NoiseLedger(ledger, bay, TimeProvider.System).Recall() is { } kg ? Text(kg) : "-")} kg");
    }

    private void Bay()
    {
        foreach (var name in Subjects("car", "car-in-bay", "patch-survey", "patch-corrections", "paddock-watch").Where(s => !Subjects("car").Contains(s)).DefaultIfEmpty("trial"))
        {
            var bay = BayFile.Parse($"bay = \"{name}\"", "bay.toml").Configuration!;
            var cars = new CarShelf(ledger, bay, TimeProvider.System);
            foreach (var car in cars.All())
                Say($"car {car.Model.Name}: {car.Hash}, {car.Who}, {When(car.SavedAt)}, entry {car.Entry}");
            Say($"car in {name}: {cars.InBay?.Model.Name ?? "-"} {cars.InBay?.Hash}");
            var patch = new PatchDesk(ledger, bay, TimeProvider.System).State;
            Say($"patch of {name}: heights {(patch.HeightMeasurement is { } s ? $"{Text(s.HeightMeasurement.HeightsMm)} mm, closure {Text(s.HeightMeasurement.ClosureMm)}, {s.Who}, {When(s.At)}" : "-")}; on: {string.Join(' ', patch.On)}");
            if (new SiteCheckLedger(ledger, name).Newest() is { } watch)
                Say($"site check of {name}: {When(watch.StartedAt)}, {watch.Who}, {Text(watch.Minutes)} min, {Text(watch.TotalKg)} kg (guessed {watch.TotalIsGuessed}), {watch.Ending} {When(watch.EndedAt)}, "
                    + $"weighing {Text(watch.Report?.ReadingPercent)} %, change {Text(watch.Report?.ChangePercent)} %, {watch.Report?.Parts.Count ?? 0} parts, zero every {Text(watch.Report?.ZeroEveryMinutes)} min");
        }
    }

    private void Sessions()
    {
        foreach (var s in new SessionLedger(ledger).All())
        {
            Say($"session {s.Id}: {s.Car.Name} '{s.Start.Title}', {s.Who}, {When(s.StartedAt)}, target {Text(s.Car.Targets.CrossWeightPercent)} ± {Text(s.Car.Targets.CrossWeightTolerancePercent)}, entry {s.Entry}");
            foreach (var (key, mark) in s.Marks.OrderBy(m => m.Key, StringComparer.Ordinal))
                Say($"  check {key}: done {mark.Done}, left out {mark.Skipped}, '{mark.Value}' '{mark.Note}', {mark.Who}");
            foreach (var c in s.Weighings)
                Say($"  weighing {c.Number} {c.Step.Kind}: {Text(c.Step.Reading.LoadsKg)} kg, cross weight {Text(c.CrossWeightPercent)} %, turns {Text(c.TurnsSinceBaseline)}, counts {c.Counts}, answered {c.Answered} '{c.ChangeName}', {c.Who}, {When(c.At)}, heights {(c.Step.HeightsMm is { } mm ? Text(mm) : "-")}");
            Say($"  open turns {Text(s.OpenTurns)}, heights {(s.HeightsNowMm is { } now ? Text(now) : "-")}, needs a name {s.NeedsName}, turns in all {Text(s.TurnsSinceBaseline)}, next {Text(s.Known?.CrossWeightPercent.Estimate)} ± {Text(s.Known?.CrossWeightPercent.StandardUncertainty)} %");
            if (s.End is { } end)
                Say($"  ended {When(s.EndedAt)}: given up {end.Abandoned}, because '{end.Because}'");
        }
    }

    private List<string> Subjects(params string[] kinds) =>
        [.. kinds.SelectMany(k => ledger.Entries(k)).Select(e => e.Subject).Distinct().Order(StringComparer.Ordinal)];

    private void Say(string line) => _lines.Add(line.TrimEnd());

    private static string When(DateTimeOffset? at) => at?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff", CultureInfo.InvariantCulture) ?? "-";

    private static string Text(double? value) => value?.ToString("G9", CultureInfo.InvariantCulture) ?? "-";

    private static string Text(in Corners c) => $"{Text(c.LF)} {Text(c.RF)} {Text(c.LR)} {Text(c.RR)}";
}
