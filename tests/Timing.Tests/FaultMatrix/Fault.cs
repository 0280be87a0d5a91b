using ScaleLink.Api.V1;

namespace Timing.Tests.FaultMatrix;

/// <summary>One row: what is done to the pads, and by which code each of them has to be named within which time.</summary>
/// <param name="Begin">Command of the simulator; CORNER stands for each pad that is named.</param>
/// <param name="End">The command that ends it; empty when it ends by itself.</param>
/// <param name="Within">Stated time to be named, s.</param>
/// <param name="Named">Codes that name it, for each pad; any of them.</param>
internal sealed record Fault(string Begin, string End, double Within, params (Corner Corner, string[] Codes)[] Named)
{
    public IEnumerable<string> BeginCommands => Named.Select(n => Begin.Replace("CORNER", Name(n.Corner))).Distinct();

    public IEnumerable<string> EndCommands => End.Length == 0 ? [] : Named.Select(n => End.Replace("CORNER", Name(n.Corner))).Distinct();

    public static string Name(Corner corner) => corner.ToString().ToUpperInvariant();
}
