using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;
using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Client.SetupSheets;

/// <summary>What changes setup sheets as commands: set, copy, fit.</summary>
internal static class SheetSteps
{
    public static IEnumerable<Command> All(CommonOptions common, Shell shell) => [Set(common, shell), Copy(common, shell), Fit(common, shell)];

    private static Option<string> Note() => new("--note") { Description = "Why, or what for; goes on record.", DefaultValueFactory = _ => "", HelpName = "TEXT" };

    private static Command Set(CommonOptions common, Shell shell)
    {
        var values = new Argument<string[]>("values")
        {
            Description = "Values as springs.rate.LF=70, springs.rate.front=\"400 lb/in\", tyres.set=\"B, used\"; nothing behind the = takes one out. scalelink sheet fields lists the names.",
            Arity = ArgumentArity.ZeroOrMore, HelpName = "NAME=VALUE",
        };
        var file = new Option<string?>("--from") { Description = "Takes over first what a car file states of the setup.", HelpName = "FILE" };
        var seen = new Option<uint?>("--seen") { Description = "Refuses when another version than this one is the newest; otherwise whatever is newest is built on.", HelpName = "N" };
        var prepared = new Option<bool>("--prepared") { Description = "It is only prepared: the car is not set up so yet." };
        var (note, who) = (Note(), WhoOption.Create(shell));
        var command = new Command("set", "Saves a new version with some values changed, and says that the car is set up so.") { values, file, seen, prepared, note, who };
        var choice = new SheetChoice(command);
        command.SetAction(async (parsed, stop) =>
        {
            var request = new SaveSheetRequest { Note = parsed.GetValue(note), Who = parsed.GetValue(who), NotOnCar = parsed.GetValue(prepared), Units = shell.Glyphs.Units.Name };
            request.Changes.AddRange(parsed.GetValue(values)!.Select(Change));
            if (SheetChanges.Read(request.Changes.Select(c => (c.Slot, c.Value)), shell.Glyphs.Units).Mistakes is { Count: > 0 } mistakes)
                return InputFile.Refuse("sheet set", mistakes, parsed.GetValue(common.Json), shell);
            if (parsed.GetValue(file) is { } path)
                request.CarFile = InputFile.ReadCar(path);
            await using var daemon = common.Connect(parsed, shell);
            request.Key = await choice.Key(parsed, daemon, stop);
            request.SeenVersion = parsed.GetValue(seen) ?? await SheetChoice.Newest(daemon, request.Key, stop);
            var saved = await daemon.Ask(o => daemon.SetupSheetControl.SaveSheetAsync(request, o), stop);
            shell.Write(saved, parsed.GetValue(common.Json), SheetPage.Saved);
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Copy(CommonOptions common, Shell shell)
    {
        var version = SheetCommand.Version();
        var (track, driver) = (
            new Option<string?>("--to-track") { Description = "Track of the copy; otherwise the same.", HelpName = "NAME" },
            new Option<string?>("--to-driver") { Description = "Driver of the copy; otherwise the same.", HelpName = "NAME" });
        var (note, who) = (Note(), WhoOption.Create(shell));
        var command = new Command("copy", "Copies a sheet for the next event. The copy is on the car once scalelink sheet fit says so.") { version, track, driver, note, who };
        var choice = new SheetChoice(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var from = await choice.Key(parsed, daemon, stop);
            var to = new SheetKey { Car = from.Car, Track = parsed.GetValue(track) ?? from.Track, Driver = parsed.GetValue(driver) ?? from.Driver };
            var request = new CopySheetRequest { From = SheetCommand.Asked(from, parsed.GetValue(version)), To = to, SeenVersion = await SheetChoice.Newest(daemon, to, stop), Note = parsed.GetValue(note), Who = parsed.GetValue(who) };
            shell.Write(await daemon.Ask(o => daemon.SetupSheetControl.CopySheetAsync(request, o), stop), parsed.GetValue(common.Json), SheetPage.Saved);
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Fit(CommonOptions common, Shell shell)
    {
        var (version, who) = (SheetCommand.Version(), WhoOption.Create(shell));
        var command = new Command("fit", "Says that the car is set up as a sheet says.") { version, who };
        var choice = new SheetChoice(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var request = new FitSheetRequest { Key = await choice.Key(parsed, daemon, stop), Who = parsed.GetValue(who) };
            if (parsed.GetValue(version) is { } number)
                request.Version = number;
            shell.Write(await daemon.Ask(o => daemon.SetupSheetControl.FitSheetAsync(request, o), stop), parsed.GetValue(common.Json), SheetPage.Saved);
            return ExitCodes.Done;
        });
        return command;
    }

    private static SheetChange Change(string typed) => typed.IndexOf('=', StringComparison.Ordinal) is > 0 and var at
        ? new() { Slot = typed[..at].Trim(), Value = typed[(at + 1)..] }
        : throw new ClientException(new Diagnostic(SheetCodes.UnknownField, $"\"{PeerText.Clean(typed, 80)}\" names no field and value.", "Write them with = between: springs.rate.LF=70. See the names: scalelink sheet fields."));
}
