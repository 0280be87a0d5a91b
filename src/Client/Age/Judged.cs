namespace ScaleLink.Client.Age;

/// <summary>A message of the daemon as a reader may take it at this instant.</summary>
/// <typeparam name="T">The message.</typeparam>
public sealed record Judged<T> where T : class
{
    /// <summary>Live, held or absent.</summary>
    public required Freshness Freshness { get; init; }

    /// <summary>The newest message; absent when <see cref="Freshness"/> says so.</summary>
    public T? Message { get; init; }

    /// <summary>Age of the message; absent when it cannot be told, and then the message is never live.</summary>
    public TimeSpan? Age { get; init; }

    /// <summary>What keeps new messages away, if anything does.</summary>
    public Diagnostic? Trouble { get; init; }

    /// <summary>True when this message is seen for the first time, false when an earlier one is judged again.</summary>
    public bool IsNew { get; init; }
}
