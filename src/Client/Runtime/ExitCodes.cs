namespace ScaleLink.Client.Runtime;

/// <summary>What the program ends with.</summary>
internal static class ExitCodes
{
    /// <summary>Done, or ended by the user.</summary>
    public const int Done = 0;
    /// <summary>Tried and not achieved: a pad refused its zero, the demo did not converge.</summary>
    public const int NotAchieved = 1;
    /// <summary>Something has to be fixed first: the daemon is away, a port is busy, an option is wrong.</summary>
    public const int ToBeRemedied = 2;
}
