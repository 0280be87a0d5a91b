using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>One version of a setup sheet on record.</summary>
/// <param name="Key">Whose.</param>
/// <param name="Version">From 1.</param>
/// <param name="Content">Its values.</param>
/// <param name="Note">What the crew said.</param>
/// <param name="CopiedFrom">What it was copied from, in words; empty: it was not.</param>
/// <param name="At">UTC, by the clock of that moment. Which is later tells the entry.</param>
/// <param name="Who">Who saved it.</param>
/// <param name="Entry">Its entry in the ledger.</param>
internal sealed record SheetVersion(SheetKey Key, int Version, SheetContent Content, string Note, string CopiedFrom, DateTimeOffset At, string Who, long Entry)
{
    /// <summary>For people.</summary>
    public string Words => $"{Key.Words}, version {Version}";
}
