
namespace ScaleLink.Daemon.Journal;

/// <summary>A diagnostic in the ledger keeps the names that the first ones were written with, and says what is absent.</summary>
internal sealed class StoredDiagnostic() : DiagnosticJsonConverter("remedy", "place", tellsAbsent: true);
