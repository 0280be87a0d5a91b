using System.CommandLine;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.InclinometerZeros;

/// <summary><c>scalelink patch inclinometer-zero</c>: finds what a pad's inclinometer says on level ground, by turning the pad round.</summary>
internal static class InclinometerZeroCommand
{
    private const string About = """
        Finds the zero of a pad's own inclinometer: read, turn the pad by half a turn onto the same marks, read, and both again. Without a
        corner: how each pad stands. A test that goes on is taken up where it stands.
        """;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var corner = new Argument<string?>("corner") { Description = "The pad: LF, RF, LR, RR. None: how all of them stand.", Arity = ArgumentArity.ZeroOrOne };
        corner.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var who = WhoOption.Create(shell);
        var read = new Option<bool>("--read") { Description = "Takes the next reading as the pad lies now, without asking, and ends." };
        var turned = new Option<bool>("--said-turned") { Description = $"With --read: the pad was turned although it reads the same ({InclinometerCodes.TurnNotSeen})." };
        var abandon = new Option<bool>("--abandon") { Description = "Gives the test up that goes on." };
        var clear = new Option<bool>("--clear") { Description = "Takes the zero out of force: the pad counts as never tested." };
        var command = new Command("inclinometer-zero", About) { corner, read, turned, abandon, clear, who };
        command.Validators.Add(result =>
        {
            if (new[] { read, abandon, clear }.Count(result.GetValue) is var ways && (ways > 1 || ways == 1 && result.GetValue(corner) is null))
                result.AddError("Name a corner, and one of --read, --abandon and --clear.");
        });
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var json = parsed.GetValue(common.Json);
            if (parsed.GetValue(corner) is not { } name)
            {
                shell.Write(await InclinometerZeroCalls.All(daemon, stop), json, list => InclinometerZeroPage.All(list, shell.Glyphs));
                return ExitCodes.Done;
            }

            var work = new InclinometerZeroCalls(daemon, WireCorners.Named(name), parsed.GetValue(who)!);
            if (parsed.GetValue(clear) || parsed.GetValue(abandon) || parsed.GetValue(read))
            {
                var pad = parsed.GetValue(clear) ? await work.Clear(stop) : parsed.GetValue(abandon) ? await work.Abandon(stop) : await work.Read(null, parsed.GetValue(turned), stop);
                shell.Write(pad, json, p => InclinometerZeroPage.Pad(p, shell.Glyphs));
                return ExitCodes.Done;
            }

            return await new InclinometerZeroGuide(shell, work, json).Run(await InclinometerZeroCalls.All(daemon, stop), stop);
        });
        return command;
    }
}
