using CarOnPads.Physics;
using CarOnPads.Runtime;

namespace CarOnPads.Pads;

/// <summary>How a pad that speaks text prints.</summary>
[Flags]
enum TextStyle
{
    /// <summary>One load with its checksum, and CR LF behind it.</summary>
    Usual = 0,
    /// <summary>A state, a number of the device, gross and tare in one line, without a checksum.</summary>
    Several = 1,
    /// <summary>Between STX and ETX, with nothing behind.</summary>
    StxEtx = 2,
    /// <summary>CR alone ends a line.</summary>
    Return = 4,
}

/// <summary>Reads the styles from the command line.</summary>
static class TextStyles
{
    static readonly (string Name, TextStyle Style)[] s_names = [("usual", TextStyle.Usual), ("several", TextStyle.Several), ("stx-etx", TextStyle.StxEtx), ("return", TextStyle.Return)];

    /// <summary>From <c>RF=several+stx-etx,RR=return</c>; pads that are not named print as usual.</summary>
    /// <exception cref="SimulatorException">CP-107 no such style or corner.</exception>
    public static IReadOnlyDictionary<Wheel, TextStyle> Parse(string text)
    {
        Dictionary<Wheel, TextStyle> styles = [];
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (part.Split('=') is not [var corner, var names] || !Enum.TryParse<Wheel>(corner, out var wheel) || !Enum.IsDefined(wheel))
                throw new SimulatorException("CP-107", $"--text: {part} is no corner with a style.", "Write RF=several+stx-etx.");
            styles[wheel] = names.Split('+').Aggregate(TextStyle.Usual, (all, name) => all | Of(name));
            if (styles[wheel].HasFlag(TextStyle.StxEtx | TextStyle.Return))
                throw new SimulatorException("CP-107", $"--text: {part} ends a line in two ways.", "Write stx-etx or return.");
        }

        return styles;
    }

    static TextStyle Of(string name) => Array.Find(s_names, n => n.Name == name) is { Name: not null } known
        ? known.Style
        : throw new SimulatorException("CP-107", $"--text: there is no style {name}.", $"The styles are {string.Join(", ", s_names.Select(n => n.Name))}.");
}
