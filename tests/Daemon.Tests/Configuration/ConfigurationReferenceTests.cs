using System.Text.RegularExpressions;
using ScaleLink.Daemon.Configuration;
using Shared;

namespace Daemon.Tests.Configuration;

/// <summary>A row in docs/configuration.md for every field, and no row for a field that is not there.</summary>
public partial class ConfigurationReferenceTests
{
    private static readonly string[] Blocks = ["listen", "mqtt", "target", "weigh", "car", "place", "zero", "ledger", "recorder"];

    [Fact]
    public void Every_field_has_its_row()
    {
        var rows = RowPattern().Matches(File.ReadAllText(RepositoryRoot.File("docs", "configuration.md"))).Select(m => m.Groups[1].Value);
        Assert.Equal(Fields().Order(), rows.Order());
    }

    [Fact]
    public void The_example_file_has_no_mistake_but_the_ports_that_are_not_there() =>
        Assert.All(BayFile.Load(RepositoryRoot.File("docs", "bay.example.toml")).Mistakes, m => Assert.Equal("SL-101", m.Code));

    // Each block is asked for a key that it does not know; its answer lists those that it does.
    private static IEnumerable<string> Fields()
    {
        var text = "zzz = 1\n" + string.Concat(Blocks.Select(b => $"[{b}]\nzzz = 1\n")) + "[[pads]]\nzzz = 1\n[[pads.registers]]\nzzz = 1\n[pads.tilt]\nzzz = 1\n";
        foreach (var mistake in BayFile.Parse(text, "bay.toml").Mistakes.Where(m => m.Code == "SL-005"))
        {
            var block = mistake.Message.ToString().Split(" is not")[0].Replace("zzz", "");
            // A tilt source has the keys of any source; one row says so.
            if (block == "pads.tilt.")
            {
                yield return "pads.tilt";
                continue;
            }

            foreach (var key in mistake.Remedy.ToString().Replace("Known: ", "").TrimEnd('.').Split(", "))
                yield return block + key;
        }
    }

    [GeneratedRegex(@"^\| `([a-z0-9_.]+)` \|", RegexOptions.Multiline)]
    private static partial Regex RowPattern();
}
