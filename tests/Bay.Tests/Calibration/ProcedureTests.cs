using System.Globalization;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Calibration;

/// <summary>
/// A pad is calibrated as a person would do it, through the terminal program, against a simulator that bends and lags. The truth is
/// the mass that the simulator was told to put down; the limits are the uncertainty that the calibration procedure itself states.
/// </summary>
[Trait("needs", "bay")]
public class ProcedureTests
{
    private const string Imperfect = "noise,quantisation,dead-load,offset,span,unequal-cells,hysteresis,non-linearity,clock-offset,clock-drift";

    [Fact]
    public void A_pad_is_calibrated_from_the_terminal_and_its_loads_become_calibrated()
    {
        using var bay = new BayRig(Imperfect);
        bay.Zero();
        Assert.False(bay.Daemon.Pad("LF").Calibrated);
        using var crew = new CalibrationCrew(bay, "LF", "--masses", "MASSES", "--load", CalibrationCrew.Load(2), "--load", CalibrationCrew.Load(5), "--load", CalibrationCrew.Load(8),
            "--repetitions", "2", "--preloads", "0", "--adopt", "--note", "first calibration procedure");
        Assert.Equal(0, crew.WorkSessions());

        var id = crew.Last("ended")["calibration_id"]!.GetValue<string>();
        var pad = bay.Daemon.Pad("LF");
        Assert.True(pad.Calibrated);
        Assert.Equal(id, pad.Calibration);
        Holds(bay, "LF", id);
        TheReportsSayWhatWasFound(bay, id);
        TheCarIsWeighedWithIt(bay, id);
    }

    [Fact]
    public void The_first_calibration_starts_without_a_sensitivity_and_the_daemon_that_starts_again_weighs_with_it()
    {
        using var bay = new BayRig(Imperfect);
        File.WriteAllLines(bay.BayFile, File.ReadAllLines(bay.BayFile).Where(line => !line.TrimStart().StartsWith("kg_per_count", StringComparison.Ordinal)));
        bay.RestartDaemon();
        bay.WaitLive();
        Assert.Contains(bay.Daemon.Pad("LF").Faults, f => f.Code == "SL-342");
        Assert.Null(bay.Daemon.Pad("LF").LoadKg);
        using var crew = new CalibrationCrew(bay, "LF", "--masses", "MASSES", "--length", "short", "--adopt");
        Assert.Equal(0, crew.WorkSessions());
        Assert.Equal(10, crew.Last("plan")["plan"]!["steps"]!.GetValue<int>());
        Assert.Equal(crew.Last("result")["result"]!["calibration"]!["id"]!.GetValue<string>(), crew.Last("ended")["calibration_id"]!.GetValue<string>());
        Assert.EndsWith("the first calibration of this pad.", crew.Last("result")["result"]!["conclusion"]!.GetValue<string>());

        bay.RestartDaemon();
        bay.WaitLive();
        Wait.Until(() => bay.Daemon.Control.ZeroPads(new ZeroPadsRequest { Who = "test", Corners = { Corner.Lf } }).Results.All(r => r.Zero is not null), Wait.Patience, "zeroed");
        bay.Simulator.Do("""{"do":"mass","corner":"LF","kg":250,"at_once":true}""");
        Wait.Until(() => bay.Daemon.Pad("LF").LoadKg is { } load && Math.Abs(load.Estimate - 250) < 3 * load.StandardUncertainty, Wait.Patience, () => $"250 kg: {bay.Daemon.Pad("LF")}");
    }

    private const double Standing = 5;
    private const int SeveralWindows = 1500, Looks = 8, BetweenLooks = 100;

    private static void Holds(BayRig bay, string corner, string id)
    {
        var calibration = bay.Daemon.CalibrationProcedures.GetCalibration(new GetCalibrationRequest { Id = id[..8] });
        Assert.Equal("first calibration procedure", calibration.Calibration.Note);
        // The pad seated, and two runs of three loads up and down between empty readings.
        Assert.Equal(1 + 2 * 7, calibration.Points.Count);
        foreach (var kg in (double[])[150, 250, 350])
        {
            bay.Simulator.Do($$"""{"do":"mass","corner":"{{corner}}","kg":{{kg.ToString(CultureInfo.InvariantCulture)}},"at_once":true}""");
            Wait.Until(() => bay.Daemon.Pad(corner).LoadKg is { } load && Math.Abs(load.Estimate - kg) < Standing, Wait.Patience, $"{kg} kg stand on the pad");
            // Once it stands whatever comes is taken: of many looks noise would sooner or later bring one within any interval.
            Thread.Sleep(SeveralWindows);
            var loads = Enumerable.Range(0, Looks).Select(_ =>
            {
                Thread.Sleep(BetweenLooks);
                return bay.Daemon.Pad(corner).LoadKg;
            }).ToList();
            // A calibration procedure with these masses is worth something: some 0.1 kg, where the nominal sensitivity left kilograms.
            Assert.All(loads, load => Assert.InRange(load.StandardUncertainty, 0, 0.15));
            Assert.Equal(kg, loads.Average(load => load.Estimate), 3 * loads[0].StandardUncertainty);
        }

        bay.Simulator.Do($$"""{"do":"mass","corner":"{{corner}}","kg":0,"at_once":true}""");
    }

    private static void TheReportsSayWhatWasFound(BayRig bay, string id)
    {
        string Export(ExportFormat format) => bay.Daemon.CalibrationProcedures.ExportProcedure(new ExportProcedureRequest { CalibrationId = id, Format = format }).Content.ToStringUtf8();
        Assert.Contains(id, Export(ExportFormat.Html));
        Assert.Contains("not approved for trade weighing", Export(ExportFormat.Html));
        Assert.Equal(15, Export(ExportFormat.Csv).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Count(l => !l.StartsWith('#')) - 1);
        Assert.Equal(id, System.Text.Json.Nodes.JsonNode.Parse(Export(ExportFormat.Json))!["result"]!["calibration"]!["id"]!.GetValue<string>());
    }

    private static void TheCarIsWeighedWithIt(BayRig bay, string id)
    {
        bay.Simulator.DoAndWait("""{"do":"lower"}""");
        Loads? loads = null;
        Wait.Until(() => (loads = bay.Daemon.Loads())?.Corners.All(c => c.LoadKg is not null) == true, Wait.Patience, () => $"weighed: {loads}");
        Assert.Equal([true, false, false, false], loads!.Corners.Select(c => c.Calibrated));
        Assert.Equal(id, loads.Corners[0].Calibration);
        Assert.All(loads.Corners, c => Assert.Equal(64, c.Calibration.Length));
    }
}
