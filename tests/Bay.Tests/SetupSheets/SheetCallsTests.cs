using Bay.Tests.Asking;
using Grpc.Core;
using ScaleLink.Api.V1;
using Shared;

namespace Bay.Tests.SetupSheets;

/// <summary>Setup sheets over gRPC, on a whole bay: versions, what is on the car, difference, copy, and the three files.</summary>
[Collection(AskingCollection.Name)]
public class SheetCallsTests(AskingBay bay)
{
    [Fact]
    public void A_sheet_goes_from_a_car_file_to_the_next_event_and_back_into_a_car_file()
    {
        var (sheets, control) = (bay.Daemon.SetupSheets, bay.Daemon.SetupSheetControl);
        var key = new SheetKey { Car = "Heron", Track = "Bramble Moor", Driver = "first driver" };
        var request = new SaveSheetRequest
        {
            Key = key, CarFile = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json")), Units = "lb-in", Who = "crew", Note = "as it came",
            Changes = { new SheetChange { Slot = "tyres.pressure_cold.all", Value = "22" }, new SheetChange { Slot = "tyres.set", Value = "<b>A</b>" } },
        };
        var first = control.SaveSheet(request);
        Assert.Equal((1u, true, true), (first.Version, first.OnCar, first.Newest));
        // 22 psi are 1.5168 bar (NIST Special Publication 811:2008, appendix B.8).
        Assert.Equal(1.5168, first.Values.Single(v => v.Slot == "tyres.pressure_cold.RR").Number, 1e-4);
        Assert.Equal(70, first.Values.Single(v => v.Slot == "springs.rate.LF").Number);
        Assert.Contains("(SL-611)", Assert.Throws<RpcException>(() => control.SaveSheet(request)).Status.Detail, StringComparison.Ordinal);

        var next = new SheetKey { Car = "Heron", Track = "Long Fen", Driver = "second driver" };
        var copy = control.CopySheet(new CopySheetRequest { From = new GetSheetRequest { Key = key }, To = next, Who = "crew" });
        Assert.Equal((false, "Heron, Bramble Moor, first driver, version 1"), (copy.OnCar, copy.CopiedFrom));
        var changed = control.SaveSheet(new SaveSheetRequest { Key = next, SeenVersion = 1, NotOnCar = true, Who = "crew", Changes = { new SheetChange { Slot = "springs.rate.front", Value = "90" }, new SheetChange { Slot = "tyres.set" } } });
        Assert.Equal("Bramble Moor", sheets.GetSheetNow(new GetSheetNowRequest()).Sheet.Key.Track);
        var differences = sheets.CompareSheets(new CompareSheetsRequest { First = new GetSheetRequest { Key = key }, Second = new GetSheetRequest { Key = next } }).Differences;
        Assert.Equal(["springs.rate.LF", "springs.rate.RF", "tyres.set"], differences.Select(d => d.Slot));
        Assert.Equal((70, 90, null), (differences[0].First.Number, differences[0].Second.Number, differences[2].Second));
        control.FitSheet(new FitSheetRequest { Key = next, Who = "crew" });
        Assert.Equal((changed.Entry, false), (sheets.GetSheetNow(new GetSheetNowRequest { Car = "Heron" }).Sheet.Entry, sheets.GetSheetNow(new GetSheetNowRequest()).HasTurns));
        Assert.Equal(["Bramble Moor", "Long Fen"], sheets.ListSheets(new ListSheetsRequest()).Sheets.Select(s => s.Key.Track));
        Assert.Equal([2u, 1u], sheets.ListSheetVersions(new ListSheetVersionsRequest { Key = next }).Versions.Select(v => v.Version));

        var page = Export(key, ExportFormat.Html);
        Assert.Contains("&lt;b&gt;A&lt;/b&gt;", page, StringComparison.Ordinal);
        Assert.Contains("1.517 bar", page, StringComparison.Ordinal);
        Assert.Contains("\"springs.rate.LF\",\"Spring rate LF\",90,\"N/mm\"", Export(next, ExportFormat.Csv), StringComparison.Ordinal);
        var file = Export(next, ExportFormat.Json);
        Assert.Empty(bay.Daemon.Cars.CheckCar(new CheckCarRequest { File = file }).Mistakes);
        Assert.True(DocumentSchemaTests.Follows(file));

        string Export(SheetKey of, ExportFormat format)
        {
            var export = sheets.ExportSheet(new ExportSheetRequest { Sheet = new GetSheetRequest { Key = of }, Format = format });
            Assert.StartsWith("setup-heron-", export.FileName, StringComparison.Ordinal);
            return export.Content.ToStringUtf8();
        }
    }

    [Fact]
    public void What_is_wrong_with_a_sheet_is_told_all_at_once()
    {
        var request = new SaveSheetRequest { Key = new SheetKey { Car = "Heron", Track = "nowhere" }, Who = "crew", Changes = { new SheetChange { Slot = "springs.rate.LF", Value = "70,5" }, new SheetChange { Slot = "wings.colour", Value = "red" } } };
        var refused = Assert.Throws<RpcException>(() => bay.Daemon.SetupSheetControl.SaveSheet(request));
        Assert.Equal(StatusCode.InvalidArgument, refused.StatusCode);
        Assert.Contains("70.5", refused.Status.Detail, StringComparison.Ordinal);
        Assert.Equal("SL-613", bay.Code(() => bay.Daemon.SetupSheetControl.SaveSheet(request)));
        Assert.Equal("SL-516", bay.Code(() => bay.Daemon.SetupSheetControl.SaveSheet(new SaveSheetRequest { Key = new SheetKey { Car = "nobody's" }, Who = "crew", Changes = { new SheetChange { Slot = "fuel.fill", Value = "3" } } })));
        Assert.Equal("SL-610", bay.Code(() => bay.Daemon.SetupSheets.GetSheet(new GetSheetRequest { Key = new SheetKey { Car = "Heron", Track = "nowhere" } })));
        Assert.Equal("SL-516", bay.Code(() => bay.Daemon.SetupSheets.GetSheetNow(new GetSheetNowRequest { Car = "nobody's" })));
    }
}
