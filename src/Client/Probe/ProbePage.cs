using System.Globalization;
using ScaleLink.Client.Runtime;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Client.Probe;

/// <summary>What was found, as lines.</summary>
internal static class ProbePage
{
    /// <summary>One port: what was heard, what was made of it, and what is not known.</summary>
    public static void Write(PortFinding finding, Shell shell)
    {
        if (finding.Trouble is { } trouble)
        {
            shell.WriteLine($"{finding.Port}: {shell.Glyphs.Tell(trouble)}");
            return;
        }

        var rate = finding.Baud is { } baud ? string.Create(CultureInfo.InvariantCulture, $"at {baud} bits a second") : "a pseudo-terminal, which has no bit rate";
        if (finding.Format.Words is { Length: > 0 } format)
            rate += $", {format}";
        shell.WriteLine($"{finding.Port}, {rate}: {string.Join("; ", finding.Found.Select(f => f.Summary))}.");
        foreach (var line in finding.Heard)
            shell.WriteLine($"  {line}");
        foreach (var remark in finding.Found.SelectMany(f => f.Remarks).Distinct())
            shell.WriteLine($"- {remark}");
    }

    /// <summary>The blocks in one piece.</summary>
    public static void Write(IEnumerable<string> proposals, Shell shell)
    {
        shell.WriteLine("");
        shell.WriteLine("For the bay file:");
        shell.WriteLine("");
        shell.WriteLine(string.Join("\n\n", proposals));
    }
}
