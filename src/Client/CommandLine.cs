using System.CommandLine;
using ScaleLink.Client.Calibration;
using ScaleLink.Client.Cars;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Completion;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Demo;
using ScaleLink.Client.Doctor;
using ScaleLink.Client.Json;
using ScaleLink.Client.Levelling;
using ScaleLink.Client.Pads;
using ScaleLink.Client.Probe;
using ScaleLink.Client.Recording;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Setup;
using ScaleLink.Client.SetupSheets;
using ScaleLink.Client.Watch;
using ScaleLink.Client.WorkSessions;
using ScaleLink.Client.WorkSessions.Guided;
using ScaleLink.Client.Zeros;
using ScaleLink.Measure;

namespace ScaleLink.Client;

/// <summary>From arguments to exit code.</summary>
internal static class CommandLine
{
    private const string About = """
        ScaleLink: live corner loads of a car on scale pads.
        Exit codes: 0 done, 1 tried and not achieved, 2 to be fixed first. Not approved for trade weighing.
        """;

    /// <summary>Parses and runs. Ends with Ctrl-C, SIGTERM, a closed terminal, or when <paramref name="stop"/> says so.</summary>
    public static async Task<int> Run(string[] arguments, Shell shell, CancellationToken stop = default)
    {
        var (parsed, common) = Parse(arguments, shell);
        if (Units.Named(parsed.GetValue(common.Units)) is var units && units != shell.Glyphs.Units)
        {
            // Options say in their help, and read, what they are given in.
            shell = shell with { Glyphs = shell.Glyphs with { Units = units } };
            (parsed, common) = Parse(arguments, shell);
        }

        using var signals = new StopSignals(stop);
        try
        {
            var settings = new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null, Output = shell.Out, Error = shell.Error };
            var code = await parsed.InvokeAsync(settings, signals.Token);
            // Help and suggestions are written by the library, which does not empty what stands before a pipe.
            shell.Out.Flush();
            // What did not work is not what the next command should do by itself.
            if (code == ExitCodes.Done)
                shell.Memory?.Keep(Said(parsed, parsed.CommandResult.Command.Options.FirstOrDefault(o => o.Name == WhoOption.Name)), Said(parsed, common.Daemon), Said(parsed, common.Units));
            return parsed.Errors.Count > 0 ? ExitCodes.ToBeRemedied : code;
        }
        catch (OperationCanceledException) when (signals.Token.IsCancellationRequested)
        {
            return ExitCodes.Done;
        }
        catch (IOException)
        {
            // Whoever read the output has heard enough.
            return ExitCodes.Done;
        }
        catch (ClientException e)
        {
            Complain(e.Diagnostic, parsed.GetValue(common.Json), shell);
            return ExitCodes.ToBeRemedied;
        }
    }

    private static (ParseResult Parsed, CommonOptions Common) Parse(string[] arguments, Shell shell)
    {
        var common = new CommonOptions(shell);
        var root = new RootCommand(About)
        {
            WatchCommand.Create(common, shell), PadsCommand.Create(common, shell), ZeroCommand.Create(common, shell),
            CalibrateCommand.Create(common, shell), CalibrationsCommand.Create(common, shell),
            CarCommand.Create(common, shell), SheetCommand.Create(common, shell), PatchCommand.Create(common, shell), PlanCommand.Create(common, shell), WorkCommand.Create(common, shell), WorkSessionCommand.Create(common, shell),
            WhatIfCommand.Create(common, shell),
            SetupCommand.Create(common, shell), DoctorCommand.Create(common, shell), ProbeCommand.Create(common, shell), RecordCommand.Create(common, shell), DemoCommand.Create(common, shell), CompletionCommand.Create(shell),
        };
        root.Options.Add(common.Daemon);
        root.Options.Add(common.Json);
        root.Options.Add(common.Units);
        return (root.Parse(arguments), common);
    }

    private static string? Said(ParseResult parsed, Option? option) => option is not null && parsed.GetResult(option) is { Implicit: false } said ? said.GetValueOrDefault<string>() : null;

    private static void Complain(Diagnostic trouble, bool json, Shell shell)
    {
        if (json)
            shell.WriteJson(new TroubleJson(trouble), ClientJson.Default.TroubleJson);
        else
            shell.Error.WriteLine($"scalelink: {shell.Glyphs.Tell(trouble)}");
    }
}
