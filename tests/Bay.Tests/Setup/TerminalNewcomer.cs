using System.Text.RegularExpressions;
using Bay.Tests.Calibration;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Setup;

/// <summary>Somebody who does what scalelink setup says, and nothing else; counts the lines that were entered and the steps onto pads.</summary>
internal sealed partial class TerminalNewcomer(SetupRig rig, ChildProcess program, IReadOnlyCollection<string> calibrated)
{
    private static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(200);

    /// <summary>Everything the program wrote.</summary>
    public List<string> Heard { get; } = [];

    /// <summary>Lines entered.</summary>
    public int Entered { get; private set; }

    private string _on = "";

    /// <summary>Works until a line fits.</summary>
    public string Until(Func<string, bool> fits)
    {
        while (true)
        {
            string? line = null;
            Wait.Until(() => (line = program.NextLine(Glance)) is not null || program.HasExited, TimeSpan.FromSeconds(120), () => $"the program says something; so far:\n{string.Join('\n', Heard)}\n{program.Said}");
            Assert.True(line is not null, $"It ended.\n{string.Join('\n', Heard)}\n{program.Said}");
            Heard.Add(line!);
            if (fits(line!))
                return line!;
            Follow(line!);
        }
    }

    private void Follow(string line)
    {
        if (line.StartsWith("Enter searches", StringComparison.Ordinal))
            Enter("");
        else if (StepOn().Match(line) is { Success: true } on)
            StepOnto(on.Groups[1].Value);
        else if (line.Contains("feels you", StringComparison.Ordinal))
            StepOff();
        else if (line.StartsWith("Name of the bay", StringComparison.Ordinal))
            Enter("unit6");
        else if (line.StartsWith("What one pad may carry", StringComparison.Ordinal))
            Enter("600 kg");
        else if (NotCalibrated().Match(line) is { Success: true } pad)
            Enter(calibrated.Contains(_on = pad.Groups[1].Value) ? "8 x 50 kg, M1" : "");
        else if (CalibrationStep().IsMatch(line))
            Load(line);
        else if (line.StartsWith("Enter takes the zero", StringComparison.Ordinal))
            Enter("");
        else if (line.StartsWith("The car, by questions", StringComparison.Ordinal))
            DescribeCar();
    }

    private void Enter(string line)
    {
        Entered++;
        program.Tell(line);
    }

    private void StepOnto(string corner)
    {
        rig.Step(_on = corner, on: true);
    }

    private void StepOff()
    {
        Thread.Sleep(1500);
        rig.Step(_on, on: false);
    }

    // What a crew knows of a car it has not measured yet; whatever has a guess is left to it.
    private void DescribeCar()
    {
        Enter(Path.Combine(rig.Folder, "heron.toml"));
        foreach (var answer in (string[])["Heron", "2450 +-3", "58 in", "1450"])
            Enter(answer);
        for (var guessed = 0; guessed < 17; guessed++)
            Enter("");
    }

    private void Load(string line)
    {
        var procedures = new CalibrationProcedures.CalibrationProceduresClient(rig.Channel);
        var step = procedures.WatchOnce(_on).Step;
        rig.Simulator.Do(FormattableString.Invariant($$"""{"do":"mass","corner":"{{_on}}","kg":{{step.LoadKg}},"at_once":true}"""));
        if (line.Contains("say so with Enter", StringComparison.Ordinal))
            Enter("");
    }

    [GeneratedRegex("^(LF|RF|LR|RR): step on")]
    private static partial Regex StepOn();

    [GeneratedRegex("^(LF|RF|LR|RR) is not calibrated")]
    private static partial Regex NotCalibrated();

    [GeneratedRegex(@"^\d+/\d+ ")]
    private static partial Regex CalibrationStep();
}
