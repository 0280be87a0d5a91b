using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using ScaleLink.Daemon.Journal;

namespace Daemon.Tests.Journal;

/// <summary>What every workflow stands on, over a real ledger: the order of a step, who is faster, and what a step that failed leaves behind.</summary>
public sealed class WorkflowTests : IDisposable
{
    private const string Shelf = "shelf";
    private static readonly DateTimeOffset Now = new(2026, 11, 30, 12, 0, 0, TimeSpan.Zero);
    private static readonly EntryKind<Put> Puts = new("put");
    private static readonly FoldedKind<ImmutableList<string>, Put> Kind = new(Puts, (things, put) => put.Body.What == "stone" ? throw new InvalidOperationException("a stone breaks the shelf") : things.Add(put.Body.What));

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-workflow-");
    private readonly LedgerDatabase _ledger;
    private readonly Workflow<ImmutableList<string>> _flow;

    public WorkflowTests()
    {
        _ledger = new LedgerDatabase(Path.Combine(_folder.FullName, "ledger.db"));
        _flow = TakeUp();
    }

    [Fact]
    public void Of_callers_at_the_same_instant_who_have_seen_the_same_one_is_first_and_the_others_are_told_of_it()
    {
        Take("cup", "Ada");
        const int Callers = 8;
        using var together = new Barrier(Callers);
        var refused = new StepRefusedException?[Callers];
        var threads = Enumerable.Range(0, Callers).Select(i => new Thread(() =>
        {
            together.SignalAndWait();
            refused[i] = Record.Exception(() => Take($"plate {i}", $"crew {i}", seen: 1)) as StepRefusedException;
        })).ToList();
        threads.ForEach(t => t.Start());
        threads.ForEach(t => t.Join());

        var first = Array.IndexOf(refused, null);
        Assert.Equal(["cup", $"plate {first}"], _flow.State);
        Assert.All(refused.Where((_, i) => i != first), r => Assert.Equal(
            (LedgerCodes.StepOvertaken, $"Somebody else has taken a step meanwhile: entry 2 by crew {first}, 17:30:00 +05:30."), (r!.Diagnostic.Code, r.Diagnostic.Message.ToString())));
        Assert.Equal(2, _ledger.Entries("put").Count);
    }

    [Fact]
    public void Callers_at_the_same_instant_who_ask_for_no_order_get_one()
    {
        var threads = Enumerable.Range(0, 4).Select(i => new Thread(() =>
        {
            for (var k = 0; k < 10; k++)
                Take($"{i}.{k}", "crew");
        })).ToList();
        threads.ForEach(t => t.Start());
        threads.ForEach(t => t.Join());
        Assert.Equal(40, _flow.State.Count);
        Assert.Equal(_flow.State, TakeUp().State);
        for (var i = 0; i < 4; i++)
            Assert.Equal(Enumerable.Range(0, 10).Select(k => $"{i}.{k}"), _flow.State.Where(s => s.StartsWith($"{i}.", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_number_is_stale_for_its_own_subject_only_also_after_a_restart()
    {
        Take("cup", "Ada");
        Take("plate", "Ben", about: "table");
        Take("spoon", "Ada", seen: 1);
        var again = TakeUp();
        Assert.Equal(LedgerCodes.StepOvertaken, Refused(() => Take("jar", "Eve", seen: 1, flow: again)).Code);
        Take("jar", "Eve", seen: 3, flow: again);
        Take("fork", "Eve", about: "table", seen: 2, flow: again);
        Assert.Equal("Nothing of that is on record.", Refused(() => Take("lid", "Eve", about: "floor", seen: 2, flow: again)).Message);
    }

    [Fact]
    public void What_a_rule_refuses_or_what_cannot_be_applied_is_neither_written_nor_shown()
    {
        Take("cup", "Ada");
        Assert.Equal("SL-301", Refused(() => _flow.Take(Shelf, _ => throw new RefusedException(CalibrationCodes.Unsettled, "No.", "Wait."))).Code);
        Assert.Throws<InvalidOperationException>(() => Take("stone", "Ben"));
        Assert.Equal(["cup"], _flow.State);
        Assert.Single(_ledger.Entries("put"));
    }

    [Fact]
    public void What_does_not_follow_when_the_ledger_is_taken_up_is_left_out_by_name()
    {
        Take("cup", "Ada");
        Puts.Append(_ledger, Now, Shelf, "Ben", new Put("stone"));
        // A newer build wrote these: another version of a kind that is known, and a kind that is not.
        _ledger.Append(Now, "put", Shelf, "Ben", """{"What":"vase","v":2}""");
        _ledger.Append(Now, "polish", Shelf, "Ben", """{"With":"wax"}""");
        Take("plate", "Ada", flow: TakeUp());
        Assert.Equal(["cup", "plate"], TakeUp().State);
        Assert.Equal(["a stone breaks the shelf", "it is of version 2, and this build reads up to version 1"], _ledger.LeftOut.All.Select(e => e.Because));
        Assert.Equal([2, 3], _ledger.LeftOut.All.Select(e => e.Id));
        Assert.Equal(4, _ledger.Entries("polish")[0].Id);
    }

    [Fact]
    public void The_number_orders_and_not_the_clock()
    {
        Take("cup", "Ada");
        Take("plate", "Ada", at: Now.AddHours(-3));
        Take("spoon", "Ada", at: Now.AddDays(-1), seen: 2);
        Assert.Equal(["cup", "plate", "spoon"], TakeUp().State);
        Assert.StartsWith("Somebody else has taken a step meanwhile: entry 3", Refused(() => Take("jar", "Eve", seen: 1)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void While_another_program_holds_the_ledger_a_step_is_refused_and_the_next_one_goes_on()
    {
        Take("cup", "Ada");
        using (var other = new SqliteConnection($"Data Source={_ledger.Path};Pooling=False"))
        {
            other.Open();
            using var hold = other.BeginTransaction();
            var refused = Refused(() => Take("plate", "Ada"));
            Assert.Equal("SL-365", refused.Code);
            Assert.Contains("another program holds the ledger", refused.Message);
            Assert.Contains(_ledger.Path, refused.Remedy);
            Assert.Equal(["cup"], _flow.State);
        }

        Take("plate", "Ada", seen: 1);
        Assert.Equal(["cup", "plate"], _flow.State);
        Assert.Equal(_flow.State, TakeUp().State);
    }

    [Fact]
    public void A_head_that_cannot_be_written_costs_no_step_that_is_on_the_disk_and_stops_the_next()
    {
        Take("cup", "Ada");
        // Nothing can be written where a folder stands.
        var inTheWay = Directory.CreateDirectory(_ledger.Path + ".head.new");
        Take("plate", "Ada");
        Assert.Equal("SL-365", Refused(() => Take("spoon", "Ada")).Code);
        Assert.Equal(["cup", "plate"], _flow.State);
        inTheWay.Delete();
        Take("spoon", "Ada", seen: 2);
        _ledger.Dispose();
        var opened = LedgerOpening.Open(_ledger.Path, Now);
        using var ledger = opened.Ledger;
        Assert.Null(opened.Damage);
        Assert.Equal(["cup", "plate", "spoon"], new Workflow<ImmutableList<string>>(ledger, [], null, Kind).State);
    }

    private Workflow<ImmutableList<string>> TakeUp() => new(_ledger, [], null, Kind);

    private void Take(string what, string who, long? seen = null, string about = Shelf, DateTimeOffset? at = null, Workflow<ImmutableList<string>>? flow = null) =>
        (flow ?? _flow).Take(_ => about, _ => Kind.Entry(at ?? Now, who, new Put(what)), seen);

    private static ScaleLink.Measure.Diagnostics.Diagnostic Refused(Action step) => Assert.Throws<StepRefusedException>(step).Diagnostic;

    public void Dispose()
    {
        _ledger.Dispose();
        _folder.Delete(recursive: true);
    }

    private sealed record Put(string What);
}
