using System.Text.Json.Nodes;
using ScaleLink.Daemon.Journal;

namespace Daemon.Tests.Journal;

/// <summary>Shapes change, entries do not: an old one is read through upcasters, one that cannot be read is left out by name.</summary>
public sealed class EntryKindTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 11, 30, 12, 0, 0, TimeSpan.Zero);
    private static readonly EntryKind<double[]> First = new("height");
    private static readonly EntryKind<Height> Second = new("height", null, FromArray);
    private static readonly EntryKind<Measured> Third = new("height", null, FromArray, InMetres);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-kinds-");
    private readonly LedgerDatabase _ledger;

    public EntryKindTests() => _ledger = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));

    [Fact]
    public void Entries_of_every_version_are_read_by_the_newest()
    {
        First.Append(_ledger, Now, "patch", "Ada", [1, 2]);
        Second.Append(_ledger, Now, "patch", "Ada", new Height(3, 4));
        Third.Append(_ledger, Now, "patch", "Ada", new Measured(0.005, 0.006));
        Assert.Equal([new(0.001, 0.002), new(0.003, 0.004), new(0.005, 0.006)], Third.All(_ledger).Select(e => e.Body));
        Assert.Equal(new Measured(0.005, 0.006), Third.Newest(_ledger, "patch")!.Body);
        Assert.Empty(_ledger.LeftOut.All);
        // The first shape stands as it always did: an older build reads what a newer one of the same version writes.
        Assert.Equal("[1,2]", _ledger.Entries("height")[0].Body);
        Assert.EndsWith("\"v\":2}", _ledger.Entries("height")[1].Body, StringComparison.Ordinal);
    }

    [Fact]
    public void An_entry_of_a_newer_version_is_left_out_by_name_and_the_one_before_it_counts()
    {
        Second.Append(_ledger, Now, "patch", "Ada", new Height(1, 2));
        Third.Append(_ledger, Now, "patch", "Ada", new Measured(1, 2));
        Assert.Equal(new Height(1, 2), Second.Newest(_ledger, "patch")!.Body);
        Assert.Equal("The entry 2 (height of patch) of the ledger cannot be read and is left out: it is of version 3, and this build reads up to version 2.", _ledger.LeftOut.Sentence);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("7")]
    [InlineData("[]")]
    [InlineData("[1]")]
    [InlineData("{\"v\":0}")]
    [InlineData("{\"v\":\"two\"}")]
    [InlineData("{\"v\":2,\"Front\":{}}")]
    [InlineData("[1e999,2]")]
    public void What_makes_no_sense_costs_itself_alone(string body)
    {
        Third.Append(_ledger, Now, "patch", "Ada", new Measured(1, 2));
        _ledger.Append(Now, "height", "patch", "Ada", body);
        Third.Append(_ledger, Now, "other", "Ada", new Measured(3, 4));
        Assert.Equal([new(1, 2), new(3, 4)], Third.All(_ledger).Select(e => e.Body));
        Assert.Equal(new Measured(1, 2), Third.Newest(_ledger, "patch")!.Body);
        Assert.Equal(2, _ledger.LeftOut.All.Single().Id);
    }

    [Fact]
    public void Many_are_told_in_one_sentence_once_each()
    {
        var told = 0;
        _ledger.LeftOut.Found += () => told++;
        for (var i = 0; i < 5; i++)
            _ledger.Append(Now, "height", "patch", "Ada", "nonsense");
        Assert.Empty(Third.All(_ledger));
        Assert.Empty(Third.All(_ledger));
        Assert.Equal(5, told);
        Assert.Equal("5 entries of the ledger cannot be read and are left out: entry 1 (height of patch), entry 2 (height of patch), entry 3 (height of patch) and others.", _ledger.LeftOut.Sentence);
    }

    public void Dispose()
    {
        _ledger.Dispose();
        _folder.Delete(recursive: true);
    }

    private static JsonObject FromArray(JsonNode array) => new JsonObject { ["Front"] = array[0]!.DeepClone(), ["Rear"] = array[1]!.DeepClone() };

    private static JsonObject InMetres(JsonNode mm) => new JsonObject { ["FrontM"] = mm["Front"]!.GetValue<double>() / 1000, ["RearM"] = mm["Rear"]!.GetValue<double>() / 1000 };

    private sealed record Height(double Front, double Rear);

    private sealed record Measured(double FrontM, double RearM);
}
