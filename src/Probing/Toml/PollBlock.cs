using System.Globalization;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Toml;

/// <summary>How often each slave of a line can be asked, where the line is too slow for what the daemon would do by itself.</summary>
internal static class PollBlock
{
    private const int UsualHz = 20, SlowestHz = 4;
    // A second register, and the silences of three and a half characters behind question and reply; 11 bits a character.
    private const double FurtherBits = (2 + 7) * 11;
    private const double Usable = 0.8;

    public static string? Hz(PortFinding finding)
    {
        var slaves = finding.Found.OfType<FoundSlave>().ToList();
        var exchange = (finding.Baud is { } baud ? FurtherBits / baud : 0) + slaves.Select(s => s.ReplyWithin.TotalSeconds).DefaultIfEmpty(0).Max();
        var most = exchange > 0 ? (int)(Usable / (exchange * slaves.Count)) : UsualHz;
        var why = $"what the line carries with {slaves.Count} slave{(slaves.Count == 1 ? "" : "s")}";
        return most >= UsualHz ? null : string.Create(CultureInfo.InvariantCulture, $"poll_hz = {Math.Max(most, SlowestHz)}  # {(most < SlowestHz ? $"more than {why}: expect gaps" : why)}");
    }
}
