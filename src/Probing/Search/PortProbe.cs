using System.IO.Ports;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Search;

/// <summary>Listens to a port at the usual rates until what comes makes sense. Sends nothing, unless slaves are to be asked.</summary>
internal sealed class PortProbe(string port, SearchSettings settings, TimeProvider time, SystemTree tree, IProgress<SearchProgress>? progress)
{
    private const int LinesShown = 6;
    // The most usual ones first; a wrong rate garbles everything, so the first that makes sense is right.
    private static readonly int[] UsualBauds = [115200, 9600, 19200, 38400, 57600, 230400, 460800, 921600, 4800, 2400, 1200];

    // Even parity is what MODBUS over Serial Line V1.02 asks for, none what most devices come with.
    private static readonly Parity[] UsualParities = [Parity.None, Parity.Even, Parity.Odd];

    private readonly bool _hasBaud = !SystemTree.RealPath(port).StartsWith("/dev/pts/", StringComparison.Ordinal);

    /// <summary>What is on it.</summary>
    /// <exception cref="PortException">SL-471 to SL-475.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="stop"/> was asked for.</exception>
    public PortFinding Find(CancellationToken stop)
    {
        if (settings.Asking == Asking.Only)
            return Ask(stop);
        var heard = Listen(stop);
        return settings.Asking == Asking.WhereSilent && heard.Bytes == 0 ? Ask(stop) : heard;
    }

    private CharacterFormat Listening => new(settings.Parity ?? Parity.None);

    // Without a bit rate there is no parity either.
    private Parity[] Parities => settings.Parity is { } one ? [one] : _hasBaud ? UsualParities : UsualParities[..1];

    private int[] Bauds => settings.Baud is { } one ? [one] : _hasBaud ? UsualBauds : UsualBauds[..1];

    private PortFinding Listen(CancellationToken stop)
    {
        PortFinding? best = null;
        foreach (var rate in Bauds)
        {
            Tell(_hasBaud ? $"listens at {rate} bits a second" : "listens");
            var heard = Listen(rate, stop);
            stop.ThrowIfCancellationRequested();
            var finding = SevenBitText.Of(heard) is ({ } text, { } format)
                ? Finding(rate, format, text, Recognise(text))
                : Finding(rate, Listening, heard, Recognise(heard));
            if (finding.IsKnown)
                return finding;
            best = best is null || finding.Bytes > best.Bytes ? finding : best;
        }

        return best!;
    }

    private PortFinding Ask(CancellationToken stop)
    {
        foreach (var rate in Bauds)
        {
            foreach (var format in Parities.Select(p => new CharacterFormat(p)))
            {
                Tell(_hasBaud ? $"asks at {rate} bits a second, {format.Parity.ToString().ToLowerInvariant()} parity" : "asks");
                using var opened = ProbedPort.Open(port, rate, format, time);
                var slaves = new SlaveSearch(opened).Ask(settings.Slaves, stop);
                if (slaves.Count > 0)
                    return Finding(rate, format, [], slaves[0]) with
                    {
                        Found = slaves,
                        Bytes = slaves.Sum(s => s.Answers.Sum(a => a.Data.Length)),
                        Heard = [.. slaves.SelectMany(s => s.Answers).Select(a => a.Describe())],
                    };
            }
        }

        return Finding(UsualBauds[0], Listening, [], new FoundNothing(
            $"Nobody answers under {string.Join(", ", settings.Slaves)}",
            "Check address and power, and A and B of the cable. A device at a rate that was not asked at does not answer: --baud."));
    }

    private byte[] Listen(int baud, CancellationToken stop)
    {
        using var opened = ProbedPort.Open(port, baud, Listening, time);
        var heard = new List<byte>();
        opened.Listen(settings.Listening, bytes =>
        {
            heard.AddRange(bytes);
            return true;
        }, stop);
        return [.. heard];
    }

    private static Found Recognise(byte[] heard) =>
        PadFrameRecognition.Of(heard) ?? TrafficRecognition.Of(heard) ?? TextRecognition.Of(heard) ?? (heard.Length == 0
            ? new FoundNothing("Nothing was heard", "A device that has to be asked stays silent: scalelink probe PORT --modbus 1 asks a Modbus slave. Otherwise check power, cable, and that transmit and receive are not swapped.")
            : new FoundNothing($"{heard.Length} bytes of no known kind", "Try another rate with --baud, a parity with --parity, or listen for longer with --seconds."));

    private void Tell(string doing) => progress?.Report(new SearchProgress(port, doing));

    private PortFinding Finding(int rate, CharacterFormat format, byte[] heard, Found found) => new()
    {
        Port = port,
        Link = SerialPorts.StableName(tree, port),
        Baud = _hasBaud ? rate : null,
        Format = format,
        Bytes = heard.Length,
        Heard = VisibleText.Lines(heard, TextRecognition.IsText(heard), LinesShown),
        Found = [found],
    };
}
