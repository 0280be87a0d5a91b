using System.Globalization;
using ScaleLink.Client.Doctor;

namespace ScaleLink.Client.Probe;

/// <summary>Writes a guess as a block of the bay file.</summary>
internal static class Proposal
{
    private const int UsualBaud = 115200;

    public static string? Of(Guess guess, string port, int? baud, CharacterFormat format, string corner, SystemTree tree)
    {
        if (guess.Protocol is null)
            return null;
        var node = SystemTree.RealPath(port);
        // A name that stays with the socket, where the system keeps one.
        var link = SerialPorts.Names(tree, "by-path").FirstOrDefault(p => p.Node == node)?.Asked ?? port;
        List<string> lines = ["[[pads]]", $"corner = {TomlText.Quoted(corner)}", $"link = {TomlText.Quoted(link)}"];
        if (baud is { } rate && rate != UsualBaud)
            lines.Add($"baud = {rate.ToString(CultureInfo.InvariantCulture)}");
        return string.Join('\n', [.. lines, .. format.Keys, .. guess.Keys, .. guess.Tables]);
    }
}
