using System.Text.Json.Serialization;

namespace ScaleLink.Daemon.Journal;

/// <summary>What was lost of a ledger.</summary>
/// <param name="Kept">Entries that are whole and were taken over.</param>
/// <param name="Known">Entries that had been written, as far as anybody knows; absent when nobody does.</param>
/// <param name="DamagedFile">The damaged ledger, kept as it was found.</param>
/// <param name="Behind">Entries behind the damage that hold by themselves and can be taken over (<see cref="LedgerTakeOver"/>).</param>
internal sealed record LedgerDamage(long Kept, long? Known, string DamagedFile, long Behind = 0)
{
    /// <summary>As it stands in the ledger.</summary>
    public static EntryKind<LedgerDamage> Kind { get; } = new("ledger-damage");

    /// <summary>What is wrong.</summary>
    [JsonIgnore]
    public string Message => $"The ledger was damaged: {Kept} entries are whole, {(Known is { } known ? $"{Math.Max(0, known - Kept)} after them are lost" : "what came after them is lost")}{(Behind == 0 ? "" : $", of which {Behind} hold by themselves")}.";

    /// <summary>What to do next.</summary>
    [JsonIgnore]
    public string Remedy => $"{(Behind == 0 ? "" : $"{Offer} ")}The damaged file is kept as {DamagedFile}. Look at the calibrations and zeros in effect before you weigh; restore a backup of the ledger if there is a better one; test the disk.";

    /// <summary>How to get back what holds by itself.</summary>
    public const string Offer = "To count these again, end the daemon and run it once with --take-over and your name: nothing ties them to the entries before the damage, which is said wherever they are used.";
}
