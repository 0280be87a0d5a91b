using System.CommandLine;
using System.Globalization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.InclinometerZeros;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.SiteCheck;
using ScaleLink.Weighing.Levelling.Files;

namespace ScaleLink.Client.Levelling;

/// <summary><c>scalelink patch</c>: how level the pads stand to each other.</summary>
internal static class PatchCommand
{
    private const double UsualSpreadMm = 0.5;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var command = new Command("patch", "The height measurement of the pads, what it does to the car, and the corrections. docs/patch.md describes a height measurement file.")
        {
            HeightMeasurement(common, shell), Clear(common, shell), Shims(common, shell), Switch(common, shell, "on"), Switch(common, shell, "off"),
            InclinometerZeroCommand.Create(common, shell),
            SiteCheckCommand.Create(common, shell),
        };
        return command.Asks(common, shell, (daemon, options, _) => daemon.Patch.GetPatchAsync(new GetPatchRequest(), options), r => PatchPage.Lines(r, shell.Glyphs));
    }

    private static Command HeightMeasurement(CommonOptions common, Shell shell)
    {
        var file = new Argument<string>("file") { Description = "A height measurement file.", HelpName = "FILE" };
        var check = new Option<bool>("--check") { Description = "Adjusts it and shows closure and effects; saves nothing." };
        var who = WhoOption.Create(shell);
        var command = new Command("heights", "Puts a height measurement of the pads into effect.") { file, check, who };
        command.SetAction(async (parsed, stop) =>
        {
            var path = parsed.GetValue(file)!;
            var read = HeightMeasurementFile.Read(InputFile.Read(path));
            if (read.HeightMeasurement is not { } input)
                return InputFile.Refuse(path, read.Mistakes, parsed.GetValue(common.Json), shell);

            await using var daemon = common.Connect(parsed, shell);
            var heightMeasurement = HeightMeasurementMessage.Of(input);
            var report = parsed.GetValue(check)
                ? await daemon.Ask(o => daemon.Patch.CheckHeightMeasurementAsync(new CheckHeightMeasurementRequest { HeightMeasurement = heightMeasurement }, o), stop)
                : await daemon.Ask(o => daemon.PatchControl.SaveHeightMeasurementAsync(new SaveHeightMeasurementRequest { HeightMeasurement = heightMeasurement, Who = parsed.GetValue(who) }, o), stop);
            shell.Write(report, parsed.GetValue(common.Json), r => PatchPage.Lines(r, shell.Glyphs));
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Clear(CommonOptions common, Shell shell)
    {
        var who = WhoOption.Create(shell);
        return new Command("clear", "Forgets the height measurement: the pads were moved.") { who }.Asks(common, shell,
            (daemon, options, parsed) => daemon.PatchControl.ClearHeightMeasurementAsync(new ClearHeightMeasurementRequest { Who = parsed.GetValue(who) }, options), r => PatchPage.Lines(r, shell.Glyphs));
    }

    private static Command Switch(CommonOptions common, Shell shell, string word)
    {
        var who = WhoOption.Create(shell);
        var name = new Argument<string>("correction") { Description = "slope or warp." };
        name.AcceptOnlyFromAmong("slope", "warp");
        return new Command(word, $"Switches a correction of the live loads {word}.") { name, who }.Asks(common, shell,
            (daemon, options, parsed) => daemon.PatchControl.SetCorrectionAsync(new SetCorrectionRequest { Name = parsed.GetValue(name), On = word == "on", Who = parsed.GetValue(who) }, options),
            r => PatchPage.Lines(r, shell.Glyphs));
    }

    private static Command Shims(CommonOptions common, Shell shell)
    {
        var shims = new Argument<string[]>("shims") { Description = "Shims at hand, thickness x pieces, in the units of this terminal (see --units): 0.5x8 1x8 2x4.", HelpName = "THICKNESSxPIECES", Arity = new ArgumentArity(1, 6) };
        shims.Validators.Add(result =>
        {
            if (result.Tokens.Any(t => Parse(t.Value, 1) is null))
                result.AddError("Give shims as thickness x pieces: 0.5x8 1x8 2x4.");
        });
        var spread = new Option<double>("--spread") { Description = $"Highest minus lowest pad allowed, {shell.Glyphs.LengthSign()}.", DefaultValueFactory = _ => UsualSpreadMm / shell.Glyphs.Units.Length.Factor, HelpName = "N" };
        return new Command("shims", "Which shims level the pads: the fewest, of those the ones that leave cross weight alone, then the thinnest.") { shims, spread }.Asks(common, shell, (daemon, options, parsed) =>
        {
            var request = new PlanShimsRequest { SpreadMm = parsed.GetValue(spread) * shell.Glyphs.Units.Length.Factor };
            request.Shims.AddRange(parsed.GetValue(shims)!.Select(s => Parse(s, shell.Glyphs.Units.Length.Factor)));
            return daemon.Patch.PlanShimsAsync(request, options);
        }, p => PatchPage.Shims(p, shell.Glyphs), p => p.Levels ? ExitCodes.Done : ExitCodes.NotAchieved);
    }

    private static ShimSet? Parse(string text, double mmPerUnit) => text.Split('x') is [var number, var pieces]
        && double.TryParse(number, CultureInfo.InvariantCulture, out var thickness) && thickness > 0 && uint.TryParse(pieces, CultureInfo.InvariantCulture, out var count)
        ? new ShimSet { ThicknessMm = thickness * mmPerUnit, Pieces = count }
        : null;
}
