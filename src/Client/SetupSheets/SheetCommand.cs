using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.SetupSheets;

/// <summary><c>scalelink sheet</c>: setup sheets for reading; what changes them stands in <see cref="SheetSteps"/>.</summary>
internal static class SheetCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var command = new Command("sheet", "Setup sheets of a car, by track and driver, in versions. docs/setup-sheet.md describes them.")
        {
            Now(common, shell), Show(common, shell), List(common, shell), Versions(common, shell), Fields(common, shell), Diff(common, shell), Print(common, shell),
        };
        foreach (var step in SheetSteps.All(common, shell))
            command.Subcommands.Add(step);
        return command;
    }

    public static Option<uint?> Version(string description = "A certain version; otherwise the newest.") => new("--version") { Description = description, HelpName = "N" };

    public static GetSheetRequest Asked(SheetKey key, uint? version)
    {
        var request = new GetSheetRequest { Key = key };
        if (version is { } number)
            request.Version = number;
        return request;
    }

    private static Command Now(CommonOptions common, Shell shell)
    {
        var command = new Command("now", "What is on the car now: the sheet that it was set up by, and the turns recorded since.");
        var choice = new SheetChoice(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            shell.Write(await choice.Now(parsed, daemon, stop), parsed.GetValue(common.Json), now => SheetPage.Now(now, shell.Glyphs));
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Show(CommonOptions common, Shell shell)
    {
        var version = Version();
        var command = new Command("show", "A sheet with all its values.") { version };
        var choice = new SheetChoice(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var key = await choice.Key(parsed, daemon, stop);
            shell.Write(await daemon.Ask(o => daemon.SetupSheets.GetSheetAsync(Asked(key, parsed.GetValue(version)), o), stop), parsed.GetValue(common.Json), sheet => SheetPage.Whole(sheet, shell.Glyphs));
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command List(CommonOptions common, Shell shell)
    {
        var car = new Option<string>("--car") { Description = "Only those of this car.", DefaultValueFactory = _ => "", HelpName = "NAME" };
        return new Command("list", "Every sheet in its newest version; the one that is on its car is marked.") { car }.Asks(common, shell,
            (daemon, options, parsed) => daemon.SetupSheets.ListSheetsAsync(new ListSheetsRequest { Car = parsed.GetValue(car) }, options), list => SheetPage.List(list.Sheets));
    }

    private static Command Versions(CommonOptions common, Shell shell)
    {
        var most = new Option<uint>("--most") { Description = "So many at most.", DefaultValueFactory = _ => 100, HelpName = "N" };
        var command = new Command("versions", "The versions of a sheet, newest first.") { most };
        var choice = new SheetChoice(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var request = new ListSheetVersionsRequest { Key = await choice.Key(parsed, daemon, stop), Most = parsed.GetValue(most) };
            shell.Write(await daemon.Ask(o => daemon.SetupSheets.ListSheetVersionsAsync(request, o), stop), parsed.GetValue(common.Json), SheetPage.Versions);
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Fields(CommonOptions common, Shell shell)
    {
        var part = new Argument<string>("part") { Description = "Only those of a part, such as springs.", DefaultValueFactory = _ => "", HelpName = "PART" };
        var command = new Command("fields", "Everything that a sheet can hold, with the names that set takes.") { part };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            shell.Write(await daemon.Ask(o => daemon.SetupSheets.ListSheetFieldsAsync(new ListSheetFieldsRequest(), o), stop), parsed.GetValue(common.Json), list => SheetPage.Fields(list.Fields, parsed.GetValue(part)!, shell.Glyphs));
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Diff(CommonOptions common, Shell shell)
    {
        var version = Version("The second version; otherwise the newest.");
        var (against, track, driver) = (
            new Option<uint?>("--against") { Description = "The first version; otherwise the one before the second, or the newest of the other sheet.", HelpName = "N" },
            new Option<string?>("--against-track") { Description = "Compares with the sheet of this track.", HelpName = "NAME" },
            new Option<string?>("--against-driver") { Description = "Compares with the sheet of this driver.", HelpName = "NAME" });
        var command = new Command("diff", "Where two versions differ, of one sheet or of two.") { version, against, track, driver };
        var choice = new SheetChoice(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var key = await choice.Key(parsed, daemon, stop);
            var other = new SheetKey { Car = key.Car, Track = parsed.GetValue(track) ?? key.Track, Driver = parsed.GetValue(driver) ?? key.Driver };
            var second = parsed.GetValue(version);
            var first = parsed.GetValue(against);
            if (first is null && other.Equals(key))
                first = Math.Max(1, (second ?? await SheetChoice.Newest(daemon, key, stop)) - 1);
            var request = new CompareSheetsRequest { First = Asked(other, first), Second = Asked(key, second) };
            shell.Write(await daemon.Ask(o => daemon.SetupSheets.CompareSheetsAsync(request, o), stop), parsed.GetValue(common.Json), c => SheetPage.Difference(c, shell.Glyphs));
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Print(CommonOptions common, Shell shell)
    {
        var version = Version();
        var command = new Command("print", "A sheet as a file: html to print, csv, or json: the car file that sets the car up so.") { version };
        var (choice, export) = (new SheetChoice(command), new ExportOptions(command));
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var request = new ExportSheetRequest { Sheet = Asked(await choice.Key(parsed, daemon, stop), parsed.GetValue(version)), Format = export.Format(parsed), Units = shell.Glyphs.Units.Name };
            var file = await daemon.Ask(o => daemon.SetupSheets.ExportSheetAsync(request, o), stop);
            export.Write(parsed, shell, file.FileName, file.Content);
            return ExitCodes.Done;
        });
        return command;
    }
}
