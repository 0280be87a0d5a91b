using System.CommandLine;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;
using ScaleLink.Probing.Ports;

namespace ScaleLink.Client.Doctor;

/// <summary><c>scalelink doctor</c>: what is wrong with ports, adapters and pads, and what to do about it.</summary>
internal static class DoctorCommand
{
    private const double Least = 2, Most = 60, Usual = 5;

    public static Command Create(CommonOptions common, Shell shell)
    {
        var ports = new Argument<string[]>("port") { Description = "Serial ports to look at. None: the daemon's; without a daemon every adapter.", Arity = ArgumentArity.ZeroOrMore };
        var seconds = new Option<double>("--seconds") { Description = "How long to listen to the pads, 2 to 60.", DefaultValueFactory = _ => Usual, HelpName = "N" };
        seconds.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<double>() is not (>= Least and <= Most))
                result.AddError("--seconds: give 2 to 60.");
        });
        var command = new Command("doctor", "Checks ports, adapters and pads; each failure comes with its remedy. Works without the daemon too.") { ports, seconds };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var examination = new Examination(daemon, new SystemTree(), TimeSpan.FromSeconds(parsed.GetValue(seconds)));
            var findings = await examination.Run(parsed.GetValue(ports) ?? [], stop);
            if (parsed.GetValue(common.Json))
                shell.WriteJson(FindingsJson.Of(findings), DoctorTexts.Default.FindingsJson);
            else
                foreach (var line in FindingsTable.Lines(findings, shell.Glyphs))
                    shell.WriteLine(line);
            return findings.Any(f => f.Outcome == Outcome.Fail) ? ExitCodes.NotAchieved : ExitCodes.Done;
        });
        return command;
    }
}
