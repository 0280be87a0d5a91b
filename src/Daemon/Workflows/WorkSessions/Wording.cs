using ScaleLink.Measure;
using ScaleLink.Weighing.WorkSessions.Planning;

namespace ScaleLink.Daemon.Workflows.WorkSessions;

/// <summary>Turns as a crew reads them.</summary>
internal static class Wording
{
    /// <summary>The crew's words for turns, without the settle that follows.</summary>
    public static string Turns(Corners turns) => CrewWords.Say(turns).Replace(": then settle", "", StringComparison.Ordinal);
}
