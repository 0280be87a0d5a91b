namespace ScaleLink.Daemon.Workflows.WorkSessions.Checks;

/// <summary>One thing to see to.</summary>
/// <param name="Key">Stable name.</param>
/// <param name="Title">For the crew.</param>
/// <param name="Hint">How to do it.</param>
/// <param name="Asks">What number belongs beside it, with its unit; empty: none does.</param>
internal sealed record CheckItem(string Key, string Title, string Hint, string Asks = "");

/// <summary>What the crew said about a check.</summary>
internal sealed record CheckMark(bool Done, bool Skipped, string Value, string Note, string Who, DateTimeOffset At)
{
    /// <summary>Ticked together with others: nobody confirmed it by itself.</summary>
    public bool Together { get; init; }
}

/// <summary>What the bay saw about a check for itself.</summary>
/// <param name="Key">Which check.</param>
/// <param name="Holds">True when it is as it should be.</param>
/// <param name="Value">What was seen.</param>
/// <param name="Findings">What is wrong or uncertain.</param>
internal sealed record SeenCheck(string Key, bool Holds, Sentence Value, IReadOnlyList<Diagnostic> Findings);
