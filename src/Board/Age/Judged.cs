namespace ScaleLink.Board.Age;

/// <summary>A message of the daemon as it may be taken at this instant.</summary>
/// <typeparam name="T">The message.</typeparam>
/// <param name="Freshness">Live, held or absent.</param>
/// <param name="Message">The newest message; absent when <paramref name="Freshness"/> says so.</param>
/// <param name="Age">Its age; absent when it cannot be told, and then it is never live.</param>
public sealed record Judged<T>(Freshness Freshness, T? Message = null, TimeSpan? Age = null) where T : class
{
    /// <summary>The message when it is live, else nothing.</summary>
    public T? Live => Freshness == Freshness.Live ? Message : null;

    /// <summary>True when there is nothing to show.</summary>
    public bool IsAbsent => Freshness == Freshness.Absent;
}
