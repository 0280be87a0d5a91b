using System.CommandLine;
using CarOnPads.Bench;
using CarOnPads.Cells;
using CarOnPads.Pads;
using CarOnPads.Physics;
using CarOnPads.Ports;
using CarOnPads.Runtime;

namespace CarOnPads.Hosting;

/// <summary>What the command line says.</summary>
sealed record RunOptions
{
    public required BayOptions Bay { get; init; }
    public required string? PortDirectory { get; init; }
    public required int Control { get; init; }
    /// <summary>Ports that heed what their reader has set, by their names.</summary>
    public required IReadOnlyDictionary<string, LineSetting> Lines { get; init; }
    public required string? Scenario { get; init; }
    public required bool ExitWithStdin { get; init; }
    public required IReadOnlyList<string> Replay { get; init; }
    public required double Pace { get; init; }

    /// <summary>The program's command, which runs <paramref name="run"/>.</summary>
    public static RootCommand Command(Func<RunOptions, Task<int>> run)
    {
        Option<string?> ports = new("--ports") { Description = "Directory for the ports LF, RF, LR and RR. Default: a new one for temporary files." };
        Option<bool> tcp = new("--tcp") { Description = "TCP listeners on loopback instead of pseudo-terminals. Always so on Windows." };
        Option<int> control = new("--control") { Description = "TCP port of the control channel on loopback. 0: a free one." };
        Option<string?> car = new("--car") { Description = "Car file (JSON). Default: the Heron." };
        Option<long?> seed = new("--seed") { Description = "Seed of every random number. Default: another one each time, told at the start." };
        Option<double> rate = new("--rate") { Description = "Samples a second of every pad, 10 to 1000.", DefaultValueFactory = _ => 320 };
        Option<double> gravity = new("--gravity") { Description = "Local gravity, m/s².", DefaultValueFactory = _ => 9.81 };
        Option<string> imperfections = new("--imperfections") { Description = "none, default, or names with commas between.", DefaultValueFactory = _ => "default" };
        Option<string?> scenario = new("--scenario") { Description = "JSON list of commands, each with \"at\" in seconds." };
        Option<string> start = new("--start") { Description = "Where the car is at first.", DefaultValueFactory = _ => "on-pads" };
        Option<string> speak = new("--speak") { Description = "pad-frames, modbus or text for all pads, or LF=modbus,RF=text and the rest pad frames.", DefaultValueFactory = _ => "pad-frames" };
        Option<string> slaves = new("--slaves") { Description = "Modbus addresses of pads, such as LF=17,RR=203; the others have 1 to 4.", DefaultValueFactory = _ => "" };
        Option<string> text = new("--text") { Description = "How pads that speak text print: RF=several+stx-etx,RR=return; the others print as usual.", DefaultValueFactory = _ => "" };
        Option<string> line = new("--line") { Description = "Rate and parity of ports, such as LF=9600/even,BUS=19200/none: garbled for a reader that has set others. Linux only; the other ports carry bytes whatever is set.", DefaultValueFactory = _ => "" };
        Option<string> tilt = new("--tilt") { Description = "Who says the tilt: each pad its own, or inclinometers on the bus.", DefaultValueFactory = _ => "own" };
        Option<string> tiltZero = new("--tilt-zero") { Description = "What inclinometers say on level ground, pitch/roll in degrees: LF=0.3/-0.2,RR=0.1/0.", DefaultValueFactory = _ => "" };
        Option<bool> withStdin = new("--exit-with-stdin") { Description = "End when the standard input closes." };
        Option<string[]> replay = new("--replay") { Description = "Plays link recordings instead of a car, each through a port named as its file.", AllowMultipleArgumentsPerToken = true };
        Option<double> pace = new("--pace") { Description = "How many times as fast as the link recordings were taken, 0.1 to 20.", DefaultValueFactory = _ => 1 };
        start.AcceptOnlyFromAmong("on-pads", "raised");
        tilt.AcceptOnlyFromAmong("own", "bus");
        var root = new RootCommand("A car on four scale pads that speaks through serial ports. For tests and demonstrations.")
        {
            ports, tcp, control, car, seed, rate, gravity, imperfections, scenario, start, speak, slaves, text, line, tilt, tiltZero, withStdin, replay, pace,
        };
        root.SetAction((parsed, _) => run(
            new RunOptions
            {
                Bay = new BayOptions
                {
                    Car = parsed.GetValue(car) is { } file ? CarFile.Read(file) : CarFile.Heron(),
                    Seed = parsed.GetValue(seed) ?? TimeProvider.System.GetTimestamp(),
                    Hertz = Checked("--rate", parsed.GetValue(rate), Pad.SlowestHertz, Pad.FastestHertz),
                    Gravity = Checked("--gravity", parsed.GetValue(gravity), 9.7, 9.9),
                    Imperfections = Imperfections.Parse(parsed.GetValue(imperfections)!),
                    Speaking = Speaking.Parse(parsed.GetValue(speak)!, parsed.GetValue(tilt) == "bus"),
                    Slaves = BusSlaves.Parse(parsed.GetValue(slaves)!),
                    TextStyles = TextStyles.Parse(parsed.GetValue(text)!),
                    TiltZeros = TiltZeros.Parse(parsed.GetValue(tiltZero)!),
                    Raised = parsed.GetValue(start) == "raised",
                },
                PortDirectory = parsed.GetValue(tcp) || OperatingSystem.IsWindows() ? null : parsed.GetValue(ports) ?? Temporary(),
                Control = parsed.GetValue(control),
                Lines = LinesOf(parsed.GetValue(line)!, Speaking.Parse(parsed.GetValue(speak)!, parsed.GetValue(tilt) == "bus"), parsed.GetValue(tcp), parsed.GetValue(rate)),
                Scenario = parsed.GetValue(scenario),
                ExitWithStdin = parsed.GetValue(withStdin),
                Replay = parsed.GetValue(replay) ?? [],
                Pace = Checked("--pace", parsed.GetValue(pace), 0.1, 20),
            }));
        return root;
    }

    // A line that is too slow for what is to go over it would lose most of it, and nobody would know why.
    static IReadOnlyDictionary<string, LineSetting> LinesOf(string text, Speaking speaking, bool isTcp, double hertz)
    {
        const int LongestMessage = 64;
        var own = Enum.GetValues<Wheel>().Where(w => speaking[(int)w] != Speech.Modbus).Select(w => w.ToString());
        var lines = LineSetting.Parse(text, [.. own, .. speaking.NeedsBus ? new[] { Run.Bus } : []]);
        if (lines.Count > 0 && (isTcp || !OperatingSystem.IsLinux()))
            throw new SimulatorException("CP-105", "--line needs pseudo-terminals of Linux.", "Take it out.");
        foreach (var (port, line) in lines.Where(l => l.Key != Run.Bus && hertz * LongestMessage * l.Value.BitsOfCharacter > l.Value.Baud))
            throw new SimulatorException("CP-105", $"--line: {line} does not carry {hertz} samples a second of {port}.", $"Give --rate {Math.Floor((double)line.Baud / LongestMessage / line.BitsOfCharacter)} or less, or a faster line.");
        return lines;
    }

    static string Temporary() => Path.Combine(Path.GetTempPath(), $"car-on-pads-{Environment.ProcessId}");

    static double Checked(string name, double value, double low, double high) =>
        value >= low && value <= high
            ? value
            : throw new SimulatorException("CP-105", $"{name} is {value}; it goes from {low} to {high}.", "See car-on-pads --help.");
}
