using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Toml;

/// <summary>The blocks of several devices, which get corners one after the other. Devices beyond the fourth stand there as comments: a bay has four pads.</summary>
/// <param name="first">The corner of the first.</param>
/// <param name="isFirstKnown">Whether somebody has said so.</param>
internal sealed class BayBlocks(string first, bool isFirstKnown)
{
    private static readonly string[] Corners = ["LF", "RF", "LR", "RR"];

    private readonly int _start = Array.IndexOf(Corners, first);
    private int _given;

    /// <summary>The blocks of all that was recognised on a port, blank lines between them; nothing when nothing was.</summary>
    public string? Of(PortFinding finding)
    {
        var blocks = finding.Found.Select(found => Of(finding, found)).OfType<string>().ToList();
        return blocks.Count == 0 ? null : string.Join("\n\n", blocks);
    }

    private string? Of(PortFinding finding, Found found)
    {
        if (found.Protocol is null)
            return null;
        var corner = Corners[(_start + _given) % Corners.Length];
        var isFree = _given < Corners.Length;
        var isKnown = isFirstKnown && _given == 0;
        _given++;
        var block = BayBlock.Of(finding, found, corner, isKnown);
        return isFree ? block : string.Join('\n', block!.Split('\n').Prepend("One more than a bay has pads; an inclinometer belongs to its pad as [pads.tilt]:").Select(line => line.StartsWith('#') ? line : $"# {line}"));
    }
}
