namespace ScaleLink.Daemon.Journal;

/// <summary>One line of the ledger; it never changes.</summary>
/// <param name="Id">Counts up by one.</param>
/// <param name="At">When it happened, UTC, to the millisecond.</param>
/// <param name="Kind">What it is, such as <c>zero</c>.</param>
/// <param name="Subject">What it is about, such as a pad's serial number.</param>
/// <param name="Who">Who did it.</param>
/// <param name="Software">The program and version that wrote it.</param>
/// <param name="Body">JSON.</param>
/// <param name="Hash">SHA-256 of this entry and of the hash before it, lower-case hexadecimal.</param>
internal sealed record LedgerEntry(long Id, DateTimeOffset At, string Kind, string Subject, string Who, string Software, string Body, string Hash);
