using System.IO.Ports;
using ScaleLink.Client.Doctor;

namespace ScaleLink.Client.Probe;

/// <summary>Listens to a port at the usual rates until what comes makes sense. Sends nothing, unless slaves are to be asked.</summary>
internal sealed class PortProbe(string port, Parity? parity, TimeProvider time, SystemTree tree)
{
    private const int LinesShown = 6;
    // The most usual ones first; a wrong rate garbles everything, so the first that makes sense is right.
    private static readonly int[] UsualBauds = [115200, 9600, 19200, 38400, 57600, 230400, 460800, 921600, 4800, 2400, 1200];

    // Even parity is what MODBUS over Serial Line V1.02 asks for, none what most devices come with.
    private static readonly Parity[] UsualParities = [Parity.None, Parity.Even, Parity.Odd];

    private readonly bool _hasBaud = !SystemTree.RealPath(port).StartsWith("/dev/pts/", StringComparison.Ordinal);

    /// <summary>Listens for so long at each rate; <paramref name="baud"/>: at that one only.</summary>
    public ProbeReport Listen(int? baud, TimeSpan span, string corner, CancellationToken stop)
    {
        ProbeReport? best = null;
        foreach (var rate in Bauds(baud))
        {
            var heard = Listen(rate, span, stop);
            var report = SevenBitText.Of(heard) is ({ } text, { } format)
                ? Report(rate, format, text, Guesses(text), corner)
                : Report(rate, Listening, heard, Guesses(heard), corner);
            if (report.Guess.Protocol is not null || stop.IsCancellationRequested)
                return report;
            best = best is null || report.Bytes > best.Bytes ? report : best;
        }

        return best!;
    }

    /// <summary>Asks slaves at one rate and parity, or at the usual ones until one answers.</summary>
    public ProbeReport Ask(IReadOnlyList<byte> slaves, int? baud, string corner, CancellationToken stop)
    {
        foreach (var rate in Bauds(baud))
        {
            foreach (var format in Parities.Select(p => new CharacterFormat(p)))
            {
                using var opened = ProbedPort.Open(port, rate, format, time);
                var answers = new SlaveSearch(opened).Ask(slaves, stop);
                if (answers.Count > 0)
                    return Report(rate, format, answers, corner);
            }
        }

        return Report(UsualBauds[0], Listening, [], Guess.None(
            $"Nobody answers under {string.Join(", ", slaves)}",
            "Check address and power, and A and B of the cable. A device at a rate that was not asked at does not answer: --baud."), corner);
    }

    private CharacterFormat Listening => new(parity ?? Parity.None);

    // Without a bit rate there is no parity either.
    private Parity[] Parities => parity is { } one ? [one] : _hasBaud ? UsualParities : UsualParities[..1];

    private int[] Bauds(int? baud) => baud is { } one ? [one] : _hasBaud ? UsualBauds : UsualBauds[..1];

    private byte[] Listen(int baud, TimeSpan span, CancellationToken stop)
    {
        using var opened = ProbedPort.Open(port, baud, Listening, time);
        var heard = new List<byte>();
        opened.Listen(span, bytes =>
        {
            heard.AddRange(bytes);
            return true;
        }, stop);
        return [.. heard];
    }

    private static Guess Guesses(byte[] heard) =>
        PadFrameGuess.Of(heard) ?? ModbusGuess.Of(heard) ?? TextGuess.Of(heard) ?? (heard.Length == 0
            ? Guess.None("Nothing was heard", "A device that has to be asked stays silent: scalelink probe PORT --modbus 1 asks a Modbus slave. Otherwise check power, cable, and that transmit and receive are not swapped.")
            : Guess.None($"{heard.Length} bytes of no known kind", "Try another rate with --baud, a parity with --parity, or listen for longer with --seconds."));

    private ProbeReport Report(int rate, CharacterFormat format, byte[] heard, Guess guess, string corner) => new()
    {
        Port = port,
        Baud = _hasBaud ? rate : null,
        Format = format,
        Bytes = heard.Length,
        Heard = VisibleText.Lines(heard, TextGuess.IsText(heard), LinesShown),
        Guess = guess,
        Proposal = Proposal.Of(guess, port, _hasBaud ? rate : null, format, corner, tree),
    };

    private ProbeReport Report(int rate, CharacterFormat format, IReadOnlyList<SlaveAnswer> answers, string corner)
    {
        var useful = answers.FirstOrDefault(a => a.Refusal is null) ?? answers[0];
        var who = answers.Select(a => a.Question.Slave).Distinct().ToList();
        var guess = new Guess("modbus-rtu", $"slaves {string.Join(", ", who)} answer", ModbusGuess.Keys(useful.Question.Slave), ["Which registers hold the load, and of what type, stands in the device's manual."])
        {
            Tables = ModbusGuess.Table(useful.Question.Function, 0, useful.Refusal is null ? useful.Question.Count : 1),
        };
        return Report(rate, format, [], guess, corner) with { Bytes = answers.Sum(a => a.Data.Length), Heard = [.. answers.Select(a => a.Describe())] };
    }
}
