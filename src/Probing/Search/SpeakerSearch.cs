using System.IO.Ports;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Search;

/// <summary>
/// Listens at each rate and parity until what comes makes sense: a short look at each, and a long one where something was recognised. A device that speaks is
/// heard at any rate, as noise at a wrong one: where nothing at all comes, nobody speaks.
/// </summary>
internal sealed class SpeakerSearch(ProbedPort port, SearchSettings settings, bool hasRates, Action<string> tell)
{
    private const int LinesShown = 6;
    // Six lines at the slowest that the daemon takes.
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(1.5);

    /// <summary>What was heard, and at which rate.</summary>
    public PortFinding Find(CancellationToken stop)
    {
        PortFinding? most = null;
        foreach (var setting in LineSetting.ToListen(settings, hasRates))
        {
            if (!port.TrySet(setting.Baud, setting.Format))
                continue;
            tell(hasRates ? $"listens at {setting.Words}" : "listens");
            var heard = new List<byte>();
            Listen(heard, most is null ? settings.Listening : TimeSpan.Zero, stop);
            var finding = Finding(setting, [.. heard]);
            if (finding.IsKnown)
                return AtLength(setting, heard, finding, stop);

            stop.ThrowIfCancellationRequested();
            most = most is null || finding.Bytes > most.Bytes ? finding : most;
            if (most.Bytes == 0)
                break;
        }

        return most ?? Finding(LineSetting.ToListen(settings, hasRates)[0], []);
    }

    // Some receivers take a parity bit for a stop bit that is missing, and hand on what came all the same: the one with which nothing is wrong is right.
    private PortFinding AtLength(LineSetting setting, List<byte> heard, PortFinding finding, CancellationToken stop)
    {
        tell($"hears {finding.Found[0].Protocol}");
        var isElsewhere = hasRates && settings.Parity is null && setting.Format.Parity == Parity.None && finding.Format.DataBits == setting.Format.DataBits;
        if (isElsewhere)
        {
            foreach (var parity in new[] { Parity.Even, Parity.Odd })
            {
                var other = setting with { Format = new CharacterFormat(parity) };
                if (!port.TrySet(other.Baud, other.Format))
                    continue;
                tell($"listens at {other.Words}");
                var again = new List<byte>();
                Listen(again, TimeSpan.Zero, stop);
                if (Finding(other, [.. again]).IsKnown)
                {
                    (setting, heard) = (other, again);
                    break;
                }
            }

            // What comes from here on does not join what was heard before.
            if (port.TrySet(setting.Baud, setting.Format) && settings.Listening > Look)
                heard.Clear();
        }

        port.Listen(settings.Listening - Look, bytes => Take(heard, bytes) && !SaysWhoItIs(heard), stop);
        stop.ThrowIfCancellationRequested();
        return Finding(setting, [.. heard]);
    }

    // Until something comes, for so long; then for a short look.
    private void Listen(List<byte> heard, TimeSpan silence, CancellationToken stop)
    {
        if (silence > Look)
            port.Listen(silence, bytes => !Take(heard, bytes), stop);
        var look = settings.Listening < Look ? settings.Listening : Look;
        if (silence <= Look || heard.Count > 0)
            port.Listen(look, bytes => Take(heard, bytes), stop);
        stop.ThrowIfCancellationRequested();
    }

    private static bool Take(List<byte> heard, byte[] bytes)
    {
        heard.AddRange(bytes);
        return true;
    }

    private static bool SaysWhoItIs(List<byte> heard) => PadFrameRecognition.Of([.. heard]) is { SerialNumber: not null };

    private static PortFinding Finding(LineSetting setting, byte[] heard)
    {
        var isSeven = SevenBitText.Of(heard);
        var (text, format) = isSeven ?? (heard, setting.Format);
        return new PortFinding
        {
            Port = "",
            Link = "",
            Baud = setting.Baud,
            Format = format,
            Bytes = heard.Length,
            Heard = VisibleText.Lines(text, TextRecognition.IsText(text), LinesShown),
            Found = Recognise(text),
        };
    }

    private static IReadOnlyList<Found> Recognise(byte[] heard)
    {
        if (PadFrameRecognition.Of(heard) is { } pad)
            return [pad];
        if (TrafficRecognition.Of(heard) is { Count: > 0 } slaves)
            return slaves;
        return [TextRecognition.Of(heard) ?? (heard.Length == 0
            ? new FoundNothing("Nothing was heard", "A device that has to be asked stays silent (scalelink probe --modbus all asks Modbus slaves). Otherwise check power, cable, and that transmit and receive are not swapped.")
            : new FoundNothing($"{heard.Length} bytes of no known kind", "Text without CR, LF or ETX at its end has to be described by hand: pause_ms in the bay file. Otherwise listen for longer, or at one rate only (scalelink probe --seconds, --baud)."))];
    }
}
