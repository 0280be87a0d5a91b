using System.Text.Json.Nodes;
using Shared.Rig;

namespace Bay.Tests.Calibration;

/// <summary>
/// Somebody who runs the terminal program without a screen and carries masses: does what each line says by the simulator's
/// commands, at once and exactly.
/// </summary>
internal sealed class CalibrationCrew : IDisposable
{
    /// <summary>Masses of 50 kg, class M1, and their names.</summary>
    public static readonly string[] Labels = [.. Enumerable.Range(0, 10).Select(i => $"50 {(char)('A' + i)}")];

    private static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(200);

    private readonly BayRig _bay;
    private readonly string _corner;
    private readonly ChildProcess _program;
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-masses-");

    public CalibrationCrew(BayRig bay, string corner, params string[] options)
    {
        (_bay, _corner) = (bay, corner);
        var masses = Path.Combine(_folder.FullName, "masses.csv");
        File.WriteAllLines(masses, Labels.Select(l => $"{l}, 50, M1"));
        _program = new ChildProcess("ScaleLink.Client", "scalelink.dll",
            ["calibrate", corner, "--daemon", $"http://127.0.0.1:{bay.GrpcPort}", "--json", "--who", "prover", .. options.Select(o => o == "MASSES" ? masses : o)]);
    }

    /// <summary>A load of the first so many masses.</summary>
    public static string Load(int count) => string.Join(" + ", Labels.Take(count));

    /// <summary>Every line so far.</summary>
    public List<JsonNode> Events { get; } = [];

    /// <summary>Called after each step that was done.</summary>
    public Action<JsonNode>? OnStep { get; init; }

    /// <summary>Works until the program ends; gives its exit code.</summary>
    public int WorkSessions()
    {
        while (true)
        {
            string? line = null;
            Wait.Until(() => (line = _program.NextLine(Glance)) is not null || _program.HasExited, Wait.Patience, () => $"the program says something. {_program.Said}");
            if (line is null)
                return _program.ExitCode;
            var happened = JsonNode.Parse(line)!;
            Assert.True(happened["event"] is not null, line);
            Events.Add(happened);
            if (happened["event"]!.GetValue<string>() == "step")
                Do(happened["step"]!);
        }
    }

    /// <summary>The last event of that name.</summary>
    public JsonNode Last(string name) => Events.LastOrDefault(e => e["event"]!.GetValue<string>() == name) ?? throw new InvalidOperationException($"No {name}. {_program.Said}");

    public void Dispose()
    {
        _program.Dispose();
        _folder.Delete(recursive: true);
    }

    private void Do(JsonNode step)
    {
        // The simulator's cells stand at the corners of the platform, in this order; see its geometry.
        var spot = step["spot"]?.GetValue<string>();
        var (x, y) = spot switch { "over cell 1" => (1, 1), "over cell 2" => (1, -1), "over cell 3" => (-1, 1), "over cell 4" => (-1, -1), _ => (0, 0) };
        var reach = SpotMm;
        _bay.Simulator.Do($$"""{"do":"mass","corner":"{{_corner}}","kg":{{50 * step["masses"]!.AsArray().Count}},"x_mm":{{x * reach}},"y_mm":{{y * reach}},"at_once":true}""");
        if (step["untold"]!.GetValue<bool>())
        {
            // Half a second would do for the hands; the pad has to rest besides before it is taken.
            Wait.Until(() => _bay.Daemon.CalibrationProcedures.WatchOnce(_corner).Ready, Wait.Patience, () => $"ready: {_bay.Daemon.CalibrationProcedures.WatchOnce(_corner)}");
            _program.Tell("record");
        }

        OnStep?.Invoke(step);
    }

    private const int SpotMm = 140;
}
