using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Json;
using ScaleLink.Client.Runtime;
using ScaleLink.Weighing.Cars.Files;

namespace ScaleLink.Client.Cars;

/// <summary><c>scalelink car</c>: car files, and the car in the bay.</summary>
internal static class CarCommand
{
    private const double AssumedKg = 1000;

    public static Command Create(CommonOptions common, Shell shell) => new("car", "Car files, and which car stands in the bay. docs/car.md describes the file.")
    {
        CarNewCommand.Create(shell), Check(common, shell), Show(common, shell), Use(common, shell), Balance(common, shell), List(common, shell), Release(common, shell),
    };

    private static Argument<string> FileArgument() => new("file") { Description = "A car file.", HelpName = "FILE" };

    private static Command Check(CommonOptions common, Shell shell)
    {
        var file = FileArgument();
        var command = new Command("check", "Lists every mistake in a car file, with line and remedy. Needs no daemon.") { file };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            var read = CarFile.Read(InputFile.ReadCar(path));
            if (parsed.GetValue(common.Json))
                shell.WriteLine(CarJson.Check(read).ToJsonString());
            else
                foreach (var line in (read.Car is { } car ? CarPage.Good(path, car) : InputFile.Mistakes(path, read.Mistakes).Append($"{read.Mistakes.Count} to correct."))
                    .Concat(InputFile.Mistakes(path, read.EarlierNames)))
                    shell.WriteLine(line);
            return read.Car is null ? ExitCodes.ToBeRemedied : ExitCodes.Done;
        });
        return command;
    }

    private static Command Show(CommonOptions common, Shell shell)
    {
        var file = FileArgument();
        var total = new Option<double?>("--total") { Description = $"Mass on the pads, {shell.Glyphs.MassSign()}; 1000 kg are assumed, and said to be.", HelpName = "TOTAL" };
        var command = new Command("show", "What one turn of each perch does to loads and heights. Needs no daemon.") { file, total };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            var totalKg = parsed.GetValue(total) * shell.Glyphs.Units.Mass.Factor;
            var read = CarFile.Read(InputFile.ReadCar(path));
            if (read.Car is not { } car)
                return InputFile.Refuse(path, read.Mistakes, parsed.GetValue(common.Json), shell);

            if (parsed.GetValue(common.Json))
                shell.WriteLine(CarJson.Effects(car, totalKg ?? AssumedKg).ToJsonString());
            else
                foreach (var line in CarPage.Effects(car, totalKg ?? AssumedKg, isAssumed: totalKg is null, shell.Glyphs))
                    shell.WriteLine(line);
            return ExitCodes.Done;
        });
        return command;
    }

    private static Command Use(CommonOptions common, Shell shell)
    {
        var (file, who) = (FileArgument(), WhoOption.Create(shell));
        var command = new Command("use", "Saves a car file in the ledger and says that this car stands in the bay.") { file, who };
        command.SetAction(async (parsed, stop) =>
        {
            var path = parsed.GetValue(file)!;
            var text = InputFile.ReadCar(path);
            if (CarFile.Read(text) is { Car: null } read)
                return InputFile.Refuse(path, read.Mistakes, parsed.GetValue(common.Json), shell);

            await using var daemon = common.Connect(parsed, shell);
            shell.Write(await PutInBay(daemon, text, parsed.GetValue(who)!, stop), parsed.GetValue(common.Json), CarPage.InBay);
            return ExitCodes.Done;
        });
        return command;
    }

    /// <summary>Saves a car file in the ledger, and says that this car stands in the bay.</summary>
    /// <exception cref="ClientException">The daemon refused, or did not answer.</exception>
    internal static async Task<Car> PutInBay(DaemonConnection daemon, string file, string who, CancellationToken stop)
    {
        var saved = await daemon.Ask(o => daemon.CarControl.SaveCarAsync(new SaveCarRequest { File = file, Who = who }, o), stop);
        return await daemon.Ask(o => daemon.CarControl.UseCarAsync(new UseCarRequest { Name = saved.Name, Hash = saved.Hash, Who = who }, o), stop);
    }

    private static Command Balance(CommonOptions common, Shell shell)
    {
        var front = new Option<double?>("--front-weight") { Description = "Also asks for ballast that brings (LF + RF) / total there.", HelpName = "PERCENT" };
        var left = new Option<double?>("--left-side-weight") { Description = "Also asks for ballast that brings (LF + LR) / total there.", HelpName = "PERCENT" };
        return new Command("balance", "From the settled loads: what each aim of the perches costs the others, start and finish with each driver, the class minimum.") { front, left }
            .Asks(common, shell, (daemon, options, parsed) => daemon.Cars.GetBalanceAsync(Question(parsed.GetValue(front), parsed.GetValue(left)), options), balance => BalancePage.Lines(balance, shell.Glyphs));

        static GetBalanceRequest Question(double? frontWeight, double? leftSideWeight)
        {
            var request = new GetBalanceRequest();
            if (frontWeight is { } f)
                request.FrontWeightPercent = f;
            if (leftSideWeight is { } l)
                request.LeftSideWeightPercent = l;
            return request;
        }
    }

    private static Command List(CommonOptions common, Shell shell) => new Command("list", "Cars in the ledger; the one in the bay is marked.")
        .Asks(common, shell, (daemon, options, _) => daemon.Cars.ListCarsAsync(new ListCarsRequest(), options), CarPage.List);

    private static Command Release(CommonOptions common, Shell shell)
    {
        var who = WhoOption.Create(shell);
        return new Command("release", "Says that no known car stands in the bay.") { who }
            .Asks(common, shell, (daemon, options, parsed) => daemon.CarControl.ReleaseCarAsync(new ReleaseCarRequest { Who = parsed.GetValue(who) }, options), _ => ["No car is chosen."]);
    }
}
