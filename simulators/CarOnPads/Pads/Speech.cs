using CarOnPads.Runtime;

namespace CarOnPads.Pads;

/// <summary>What a pad speaks.</summary>
enum Speech
{
    /// <summary>The open frames of docs/pad-frames.md.</summary>
    PadFrames,
    /// <summary>Modbus RTU, as a slave on the bus that all such pads share.</summary>
    Modbus,
    /// <summary>A line of text for each sample.</summary>
    Text,
}

/// <summary>What each pad speaks, and where the inclinometers are.</summary>
sealed record Speaking
{
    readonly Speech[] _pads = new Speech[4];

    /// <summary>The inclinometers answer as slaves of their own on the bus; the pads then say nothing of tilt.</summary>
    public bool TiltOnBus { get; init; }

    /// <summary>What that pad speaks.</summary>
    public Speech this[int pad] => _pads[pad];

    /// <summary>Something is on the bus.</summary>
    public bool NeedsBus => TiltOnBus || _pads.Contains(Speech.Modbus);

    /// <summary>One word for all pads, or <c>LF=modbus,RF=text</c>, the rest speaking pad frames.</summary>
    /// <exception cref="SimulatorException">CP-107 no such word or corner.</exception>
    public static Speaking Parse(string text, bool tiltOnBus = false)
    {
        var speaking = new Speaking { TiltOnBus = tiltOnBus };
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (part.Split('=') is [var corner, var word])
                speaking._pads[Corner(corner)] = Word(word);
            else
                Array.Fill(speaking._pads, Word(part));
        }

        return speaking;
    }

    /// <summary>The word for it on the command line.</summary>
    public static string NameOf(Speech speech) => speech switch
    {
        Speech.Modbus => "modbus",
        Speech.Text => "text",
        _ => "pad-frames",
    };

    static int Corner(string text) => Enum.TryParse<Physics.Wheel>(text, out var wheel) && Enum.IsDefined(wheel)
        ? (int)wheel
        : throw new SimulatorException("CP-107", $"--speak: there is no corner {text}.", "The corners are LF, RF, LR and RR.");

    static Speech Word(string text) => Enum.GetValues<Speech>().Where(speech => NameOf(speech) == text).Select(speech => (Speech?)speech).FirstOrDefault()
        ?? throw new SimulatorException("CP-107", $"--speak: nobody speaks {text}.", "Write pad-frames, modbus or text.");
}
