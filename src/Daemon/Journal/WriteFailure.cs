using Microsoft.Data.Sqlite;

namespace ScaleLink.Daemon.Journal;

/// <summary>Why a step could not be written, and what to do about it.</summary>
internal static class WriteFailure
{
    private const int Busy = 5, Locked = 6, ReadOnly = 8, Full = 13;
    // Linux and macOS, Linux beyond a quota or a limit; Windows: ERROR_HANDLE_DISK_FULL, ERROR_DISK_FULL.
    private const int NoSpace = 28, OverQuota = 122, TooLarge = 27, HandleDiskFull = 39, DiskFull = 112;

    /// <summary>Whether it is the disk that failed, or whoever else holds it, and not the step.</summary>
    public static bool Is(Exception failure) => failure is SqliteException or IOException or UnauthorizedAccessException;

    /// <summary>The refusal of the step.</summary>
    public static StepRefusedException Refuse(Exception failure, string ledger)
    {
        var (why, remedy) = failure switch
        {
            SqliteException { SqliteErrorCode: Full } => ("the disk is full", $"Make room on the disk that holds {ledger}"),
            SqliteException { SqliteErrorCode: Busy or Locked } => ("another program holds the ledger", $"End whatever else has {ledger} open, such as a backup or a database tool"),
            SqliteException { SqliteErrorCode: ReadOnly } or UnauthorizedAccessException => ("the ledger may not be written", $"Let the daemon write {ledger} and its folder"),
            IOException when IsFull(failure.HResult) => ("the disk is full", $"Make room on the disk that holds {ledger}"),
            _ => (failure.Message.TrimEnd('.'), $"See to the disk that holds {ledger}"),
        };
        return new(LedgerCodes.StepUnwritten, $"The step could not be written to the ledger and was not taken: {why}.", $"{remedy}, then do it again; the daemon need not be restarted.", failure);
    }

    private static bool IsFull(int result) => OperatingSystem.IsWindows() ? (result & 0xFFFF) is HandleDiskFull or DiskFull : result is NoSpace or OverQuota or TooLarge;
}
