namespace Shared;

/// <summary>
/// With SCALELINK_KEEP_LEDGERS naming a folder, the ledgers that whole bays have written are left there: this is where frozen ledgers come from,
/// written by a real daemon and not by a test.
/// </summary>
internal static class KeptLedgers
{
    private static readonly string[] Parts = ["", "-wal", ".head"];

    /// <summary>Copies the ledger and what belongs to it, once its daemon has ended.</summary>
    public static void Keep(string ledger, string name)
    {
        if (Environment.GetEnvironmentVariable("SCALELINK_KEEP_LEDGERS") is not { Length: > 0 } folder)
            return;
        Directory.CreateDirectory(folder);
        foreach (var part in Parts.Where(part => File.Exists(ledger + part)))
            File.Copy(ledger + part, Path.Combine(folder, $"{name}.db{part}"));
    }
}
