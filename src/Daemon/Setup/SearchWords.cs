using ScaleLink.Probing.Recognition;

namespace ScaleLink.Daemon.Setup;

/// <summary>What a search found on a port, in words.</summary>
internal static class SearchWords
{
    public static SearchedPort Of(PortFinding finding)
    {
        if (finding.Trouble is { } trouble)
            return new SearchedPort(finding.Port, "", "", trouble);
        var how = string.Join(", ", new[] { finding.Baud is { } baud ? $"{baud} bits a second" : "", finding.Format.Words }.Where(w => w.Length > 0));
        var what = string.Join("; ", finding.Found.Select(f => f.Summary));
        var nothing = finding.IsKnown ? null : new Diagnostic(SetupCodes.NothingFound, $"{what}.", string.Join(" ", finding.Found.SelectMany(f => f.Remarks)));
        return new SearchedPort(finding.Port, "", how.Length > 0 ? $"{what}, {how}" : what, nothing);
    }
}
