using System.Diagnostics;
using System.Text.Json.Nodes;
using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests;

/// <summary>
/// Four pads of which nothing is known: rate, parity, slave number and the way of printing are drawn by chance. The simulator garbles, bit by bit, what a reader hears that
/// has set another rate or parity. What this does not prove: how real receivers take a line that is set otherwise, and how long bytes take on one.
/// </summary>
[Trait("needs", "bay")]
public class UnknownPadsTests
{
    private const double Kg = 40;
    private static readonly string[] Parities = ["none", "even", "odd"];
    private static readonly string[] OwnLines = ["LF", "RF", "RR"];
    private static readonly string[] Styles = ["usual", "several", "several+stx-etx", "several+return", "stx-etx", "return"];

    [Fact]
    public async Task The_file_that_is_proposed_passes_and_the_daemon_has_raw_counts_from_all_four()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only Linux tells what the reader of a pseudo-terminal has set.");
        var seed = int.TryParse(Environment.GetEnvironmentVariable("SCALELINK_SEED"), out var asked) ? asked : Random.Shared.Next();
        TestContext.Current.TestOutputHelper?.WriteLine($"SCALELINK_SEED={seed}");
        var chance = new Random(seed);
        // The slowest settings come last in the search; a test has no four minutes.
        var (bus, slave) = ($"{Of(chance, 9600, 19200)}/{Of(chance, Parities)}", chance.Next(1, 248));
        var lines = OwnLines.Select(c => $"{c}={Of(chance, 9600, 19200, 38400, 57600, 115200)}/{Of(chance, Parities)}").Append($"BUS={bus}").ToList();
        var style = Of(chance, Styles);
        var drawn = $"seed {seed}: {string.Join(", ", lines)}, slave {slave}, text {style}";

        var folder = Directory.CreateTempSubdirectory("scalelink-unknown-");
        using (var simulator = new Simulator(Path.Combine(folder.FullName, "ports"), "default", rate: 12, seed: seed, speak: "LF=pad-frames,RF=text,LR=modbus,RR=pad-frames",
            further: ["--line", string.Join(',', lines), "--slaves", $"LR={slave}", "--text", $"RF={style}"]))
        {
            var reports = Probe(simulator, drawn);
            Assert.Equal(lines.Select(l => l.Split('=')[1]).Order(), reports.Select(r => $"{r["baud"]}/{r["parity"]}").Order());
            Assert.Contains($"slave = {slave}\n", $"{reports[2]["proposal"]}", StringComparison.Ordinal);
            Assert.All(reports, r => Assert.DoesNotContain("kg_per_count", $"{r["proposal"]}", StringComparison.Ordinal));

            var (bayFile, grpc) = (Path.Combine(folder.FullName, "bay.toml"), FreePorts.Next());
            File.WriteAllText(bayFile, $"""
                bay = "unit6"
                [listen]
                page_port = {FreePorts.Next()}
                grpc_port = {grpc}
                [mqtt]
                broker = "off"

                {string.Join("\n\n", reports.Select(r => r["proposal"]!.GetValue<string>()))}
                """);
            using (var check = new ChildProcess("ScaleLink.Daemon", "scalelinkd.dll", "--bay", bayFile, "--check"))
                Assert.True(check.WaitForExit(Wait.Patience) && check.ExitCode == 0, $"{drawn}: {check.Said}\n{File.ReadAllText(bayFile)}");
            using var daemon = new DaemonProcess(bayFile, grpc);
            await Loaded(simulator, daemon, drawn);
        }

        folder.Delete(recursive: true);
    }

    private static List<JsonNode> Probe(Simulator simulator, string drawn)
    {
        using var probe = new ChildProcess("ScaleLink.Client", "scalelink.dll", ["probe", .. Simulator.Corners.Select(c => $"{simulator.Ready["ports"]![c]}"), "--rates", "--modbus", "all", "--json"]);
        var reports = Enumerable.Range(0, 4).Select(k => JsonNode.Parse(probe.FirstLine(TimeSpan.FromMinutes(6)))!).ToList();
        Assert.True(reports.TrueForAll(r => r["proposal"] is not null), $"{drawn}: {string.Join('\n', reports)}");
        return reports;
    }

    // A mass on each pad moves its counts by what it weighs; of the slave one cell of four is proposed as the load.
    private static async Task Loaded(Simulator simulator, DaemonProcess daemon, string drawn)
    {
        var before = await Counts(daemon, drawn);
        foreach (var corner in Simulator.Corners)
            simulator.DoAndWait(FormattableString.Invariant($$"""{"do":"mass","corner":"{{corner}}","kg":{{Kg}},"at_once":true}"""));
        await Task.Delay(TimeSpan.FromSeconds(1));
        var after = await Counts(daemon, drawn);
        foreach (var (corner, cells) in new[] { ("LF", 1.0), ("RF", 1.0), ("LR", 0.25), ("RR", 1.0) })
        {
            var kgPerCount = corner == "RF" ? 0.0001 : simulator.Ready["kg_per_count"]![corner]!.GetValue<double>();
            var place = Enum.Parse<Corner>(corner, ignoreCase: true);
            Assert.Equal(Kg * cells, (after[place] - before[place]) * kgPerCount, 1.5);
        }
    }

    private static async Task<Dictionary<Corner, double>> Counts(DaemonProcess daemon, string drawn)
    {
        using var limit = new CancellationTokenSource(Wait.Patience);
        var sums = new Dictionary<Corner, List<double>>();
        using var stream = daemon.Feed.WatchSamples(new WatchSamplesRequest(), cancellationToken: limit.Token);
        var watch = Stopwatch.StartNew();
        while ((sums.Count < 4 || sums.Values.Any(s => s.Count < 5) || watch.Elapsed < TimeSpan.FromSeconds(1)) && await stream.ResponseStream.MoveNext(limit.Token))
        {
            var batch = stream.ResponseStream.Current;
            if (!sums.TryGetValue(batch.Corner, out var all))
                sums[batch.Corner] = all = [];
            all.AddRange(batch.Samples.Select(s => (double)s.Counts.Sum(c => (long)c)));
        }

        Assert.True(sums.Count == 4, $"{drawn}: only {string.Join(", ", sums.Keys)} gave counts");
        return sums.ToDictionary(s => s.Key, s => s.Value.TakeLast(5).Average());
    }

    private static T Of<T>(Random chance, params T[] all) => all[chance.Next(all.Length)];
}
