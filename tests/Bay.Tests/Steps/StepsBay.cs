using Microsoft.Data.Sqlite;
using Shared.Rig;

namespace Bay.Tests.Steps;

/// <summary>Empty pads with a zero, and how far their ledger goes.</summary>
public sealed class StepsBay : IDisposable
{
    public StepsBay() => Rig.Zero();

    internal BayRig Rig { get; } = new();

    /// <summary>Number of the newest entry; numbers have no gaps.</summary>
    internal long Entries()
    {
        using var ledger = new SqliteConnection($"Data Source={Path.Combine(Path.GetDirectoryName(Rig.BayFile)!, "ledger.db")};Mode=ReadOnly;Pooling=False");
        ledger.Open();
        using var query = ledger.CreateCommand();
        query.CommandText = "SELECT COALESCE(MAX(id), 0) FROM entries";
        return (long)query.ExecuteScalar()!;
    }

    public void Dispose() => Rig.Dispose();
}

/// <summary>Test classes that share it: each takes steps of its own and counts from where it found the ledger.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name)]
public sealed class StepsCollection : ICollectionFixture<StepsBay>
{
    public const string Name = "steps";
}
