using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.SetupSheets;
using ScaleLink.Weighing.Cars.Files;

namespace Daemon.Tests.Workflows.SetupSheets;

/// <summary>Setup sheets in the ledger: versions, who sees what, and what is refused.</summary>
public sealed class SheetDeskTests : IDisposable
{
    private readonly SheetBench _bench = new();

    [Fact]
    public void A_version_builds_on_the_one_before_and_both_stay()
    {
        var first = _bench.Save(SheetBench.Moor, 0, "crew", ("springs.rate.front", "70"), ("tyres.set", "A"));
        var second = _bench.Save(SheetBench.Moor, 1, "engineer", ("springs.rate.LF", "90"), ("tyres.set", ""));
        Assert.Equal((1, 2), (first.Version, second.Version));
        Assert.Equal((90, 70), (second.Content.Number("springs.rate", "LF"), second.Content.Number("springs.rate", "RF")));
        Assert.Equal(2, second.Content.Count);
        foreach (var desk in new[] { _bench.Desk, _bench.Again() })
        {
            Assert.Equal("A", desk.Find(SheetBench.Moor, 1).Content[new("tyres.set", "")]!.Value.Text);
            Assert.Equal((2, "engineer"), (desk.Find(SheetBench.Moor, null).Version, desk.Find(SheetBench.Moor, null).Who));
            Assert.Equal(second.Entry, desk.State.OnCar["Heron"].Sheet.Entry);
        }
    }

    [Fact]
    public void Who_has_not_seen_the_newest_version_is_refused_and_told_whose_it_is()
    {
        _bench.Save(SheetBench.Moor, 0, "one device", ("fuel.fill", "20"));
        _bench.Save(SheetBench.Moor, 1, "one device", ("fuel.fill", "25"));
        var refused = SheetBench.Refusal(() => _bench.Save(SheetBench.Moor, 1, "another device", ("fuel.fill", "30")));
        Assert.Equal("SL-611", refused.Code.Text);
        Assert.Contains("Version 2 of Heron, Bramble Moor, first driver was saved meanwhile by one device", refused.Message.ToString(), StringComparison.Ordinal);
        Assert.Equal("SL-611", SheetBench.Refusal(() => _bench.Save(SheetBench.Moor, 0, "another device", ("fuel.fill", "30"))).Code.Text);
        Assert.Equal("SL-611", SheetBench.Refusal(() => _bench.Save(SheetBench.Moor with { Track = "Elsewhere" }, 2, "another device", ("fuel.fill", "30"))).Code.Text);
        Assert.Equal(25, _bench.Again().Find(SheetBench.Moor, null).Content.Number("fuel.fill"));
    }

    [Fact]
    public async Task Of_many_who_save_at_once_each_version_has_one()
    {
        var saved = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => Task.Run(() =>
        {
            try
            {
                return _bench.Save(SheetBench.Moor, 0, $"device {i}", ("fuel.fill", $"{20 + i}")) is not null;
            }
            catch (StepRefusedException)
            {
                return false;
            }
        })));
        Assert.Single(saved, won => won);
        Assert.Single(_bench.Again().State.Of(SheetBench.Moor));
    }

    [Fact]
    public void Tracks_and_drivers_have_sheets_of_their_own_whatever_their_spelling_in_capitals()
    {
        _bench.Save(SheetBench.Moor, 0, "crew", ("fuel.fill", "20"));
        _bench.Save(SheetBench.Moor with { Driver = "second driver" }, 0, "crew", ("fuel.fill", "25"));
        _bench.Save(new("Heron", "bramble moor", "First Driver"), 1, "crew", ("fuel.fill", "21"));
        Assert.Equal(2, _bench.Desk.State.Sheets.Count);
        Assert.Equal("Heron, Bramble Moor, first driver, version 2", _bench.Desk.Find(SheetBench.Moor, null).Words);
    }

    [Fact]
    public void What_cannot_be_is_refused_by_its_code()
    {
        Assert.Equal("SL-516", SheetBench.Refusal(() => _bench.Save(new("Nobody's car", "", ""), 0, "crew", ("fuel.fill", "20"))).Code.Text);
        Assert.Equal("SL-610", SheetBench.Refusal(() => _bench.Desk.Find(SheetBench.Moor, null)).Code.Text);
        Assert.Equal("SL-615", SheetBench.Refusal(() => _bench.Save(SheetBench.Moor, 0, "crew")).Code.Text);
        _bench.Save(SheetBench.Moor, 0, "crew", ("fuel.fill", "20"));
        Assert.Equal("SL-615", SheetBench.Refusal(() => _bench.Save(SheetBench.Moor, 1, "crew", ("fuel.fill", "20.0"))).Code.Text);
        Assert.Equal("SL-610", SheetBench.Refusal(() => _bench.Desk.Find(SheetBench.Moor, 7)).Code.Text);
        Assert.Equal("SL-610", SheetBench.Refusal(() => _bench.Desk.Fit(SheetBench.Moor, 7, "crew")).Code.Text);
        Assert.Equal(["SL-612", "SL-613"], Assert.Throws<ScaleLink.Measure.Diagnostics.DiagnosticException>(() => SheetBench.Draft(("fuel.fil", "1"), ("fuel.fill", "1,5"))).Diagnostics.Select(d => d.Code.Text));
        Assert.Equal("SL-616", SheetBench.Refusal(() => SheetKey.Of("Heron", new string('m', 81), "")).Code.Text);
        Assert.Equal("SL-616", SheetBench.Refusal(() => SheetKey.Of("Heron", "Moor", "first\u202edriver")).Code.Text);
        Assert.Equal(80, SheetKey.Of("Heron", new string('m', 80), "").Track.Length);
    }

    [Fact]
    public void A_clock_that_steps_back_makes_no_version_older()
    {
        _bench.Save(SheetBench.Moor, 0, "crew", ("fuel.fill", "20"));
        _bench.Work.Time.AutoAdvanceAmount = TimeSpan.Zero;
        var stepped = new Microsoft.Extensions.Time.Testing.FakeTimeProvider(_bench.Work.Time.GetUtcNow() - TimeSpan.FromDays(400));
        var later = new SheetDesk(_bench.Work.Database, _bench.Cars, stepped);
        later.Save(SheetBench.Moor, 1, SheetBench.Draft(("fuel.fill", "30")), "crew");
        foreach (var desk in new[] { later, _bench.Again() })
        {
            Assert.Equal((2, 30), (desk.Find(SheetBench.Moor, null).Version, desk.Find(SheetBench.Moor, null).Content.Number("fuel.fill")));
            Assert.Equal(2, desk.State.OnCar["Heron"].Sheet.Version);
        }
    }

    [Fact]
    public void An_entry_that_cannot_be_read_costs_its_version_and_renumbers_none()
    {
        _bench.Save(SheetBench.Moor, 0, "crew", ("fuel.fill", "20"));
        _bench.Work.Database.Append(_bench.Work.Time.GetUtcNow(), "setup-sheet", "Heron", "crew", "{\"Track\":\"Bramble Moor\",\"Driver\":\"first driver\",\"Version\":2,\"Values\":{\"fuel.fill\":[]}}");
        var third = new SheetVersion(SheetBench.Moor, 3, SheetBench.Draft(("fuel.fill", "40")).On(ScaleLink.Weighing.SetupSheets.SheetContent.Empty), "", "", default, "crew", 0);
        StoredSheet.Kind.Append(_bench.Work.Database, _bench.Work.Time.GetUtcNow(), "Heron", "crew", new("Bramble Moor", "first driver", 3, StoredSheet.Stored(third.Content), "", "", true));
        var desk = _bench.Again();
        Assert.Equal([1, 3], desk.State.Of(SheetBench.Moor).Select(v => v.Version));
        Assert.Equal("setup-sheet", Assert.Single(_bench.Work.Database.LeftOut.All).Kind);
        Assert.Equal(4, desk.Save(SheetBench.Moor, 3, SheetBench.Draft(("fuel.fill", "41")), "crew").Version);
        Assert.Equal("SL-610", SheetBench.Refusal(() => desk.Find(SheetBench.Moor, 2)).Code.Text);
    }

    [Fact]
    public void The_stored_shape_is_read_and_a_field_of_a_later_build_is_kept_through_the_next_version()
    {
        // As this shape is written; a body without v is version 1 for ever.
        _bench.Work.Database.Append(_bench.Work.Time.GetUtcNow(), "setup-sheet", "Heron", "crew",
            "{\"Track\":\"Bramble Moor\",\"Driver\":\"first driver\",\"Version\":1,\"Values\":{\"springs.rate.LF\":70,\"tyres.set\":\"A\",\"inerters.mass.LF\":3.5},\"Note\":\"n\",\"CopiedFrom\":\"\",\"OnCar\":true}");
        _bench.Work.Database.Append(_bench.Work.Time.GetUtcNow(), "setup-fitted", "Heron", "crew", "{\"Track\":\"Bramble Moor\",\"Driver\":\"first driver\",\"Version\":1}");
        var desk = _bench.Again();
        desk.Save(SheetBench.Moor, 1, SheetBench.Draft(("springs.rate.LF", "80")), "crew");
        var sheet = _bench.Again().Find(SheetBench.Moor, null);
        Assert.Equal(["springs.rate.LF", "tyres.set", "inerters.mass.LF"], sheet.Content.Values.Select(v => v.Key.ToString()));
        Assert.Equal(3.5, sheet.Content.Values.Last().Value.Number);
        Assert.Contains("3.5", SheetHtml.Of(sheet, ScaleLink.Measure.Units.Metric), StringComparison.Ordinal);
        Assert.Contains("inerters.mass.LF", SheetCsv.Of(sheet), StringComparison.Ordinal);
        Assert.Empty(_bench.Work.Database.LeftOut.All);
    }

    [Fact]
    public void A_ledger_that_cannot_be_written_refuses_the_step_and_takes_the_next()
    {
        _bench.Save(SheetBench.Moor, 0, "crew", ("fuel.fill", "20"));
        using (var hold = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={_bench.Work.Database.Path};Pooling=False"))
        {
            hold.Open();
            using var begin = hold.CreateCommand();
            begin.CommandText = "BEGIN IMMEDIATE";
            begin.ExecuteNonQuery();
            Assert.Equal("SL-365", SheetBench.Refusal(() => _bench.Save(SheetBench.Moor, 1, "crew", ("fuel.fill", "30"))).Code.Text);
        }

        Assert.Equal(1, _bench.Desk.Find(SheetBench.Moor, null).Version);
        Assert.Equal(2, _bench.Save(SheetBench.Moor, 1, "crew", ("fuel.fill", "30")).Version);
    }

    [Fact]
    public void A_thousand_versions_are_read_at_a_start()
    {
        for (var version = 0; version < 1000; version++)
            StoredSheet.Kind.Append(_bench.Work.Database, _bench.Work.Time.GetUtcNow(), "Heron", "crew",
                new("Bramble Moor", "first driver", version + 1, StoredSheet.Stored(SheetBench.Draft(("fuel.fill", $"{version / 10.0}"), ("springs.rate.all", "70")).On(ScaleLink.Weighing.SetupSheets.SheetContent.Empty)), "", "", true));
        var desk = _bench.Again();
        Assert.Equal((1000, 99.9), (desk.Find(SheetBench.Moor, null).Version, desk.Find(SheetBench.Moor, null).Content.Number("fuel.fill")));
        Assert.Equal(1001, desk.Save(SheetBench.Moor, 1000, SheetBench.Draft(("fuel.fill", "1")), "crew").Version);
    }

    [Fact]
    public void A_sheet_leaves_as_the_car_file_that_sets_the_car_up_so()
    {
        var sheet = _bench.Save(SheetBench.Moor, 0, "crew", ("springs.rate.LF", "90"), ("tyres.pressure_cold.all", "1.5"), ("ballast.fitted.battery box", "10"));
        var car = CarFile.Read(_bench.Desk.CarFile(sheet));
        Assert.Empty(car.Mistakes);
        Assert.Equal((90, 70, 10, 1.5), (car.Car!.Suspension.LF.SpringRateNPerMm.Estimate, car.Car.Suspension.RF.SpringRateNPerMm.Estimate, car.Car.BallastStations[1].FittedKg, car.Car.Setup.Number("tyres.pressure_cold", "RR")));
    }

    public void Dispose() => _bench.Dispose();
}
