namespace Bay.Tests.Replay;

/// <summary>What is recorded for one replay: pads, what is done to them, and for how long. The link recordings lie in tests/Replay/NAME.</summary>
/// <param name="Speak">What the pads speak.</param>
/// <param name="Begin">Orders to the simulator, a third of the way in.</param>
/// <param name="End">Orders at two thirds.</param>
internal sealed record Scene(string Speak, string[] Begin, string[] End)
{
    /// <summary>How long it is, s.</summary>
    public double Seconds { get; init; } = 3.9;

    /// <summary>Where the tilt comes from.</summary>
    public string Tilt { get; init; } = "own";

    /// <summary>Faults that hang on time and not on bytes alone, and have to be seen: corner and code. Others of their kind are not compared, for a busy machine may add them by itself.</summary>
    public string[] Timed { get; init; } = [];

    /// <summary>A change to the bay file with which it is played.</summary>
    public (string From, string To)? Edit { get; init; }

    /// <summary>Whether the daemon asks that pad, at its own pace, instead of listening to it.</summary>
    public bool IsAsked(string corner) => Speak == "modbus" || Speak.Contains($"{corner}=modbus", StringComparison.Ordinal);

    /// <summary>Empty pads, without which no load is known.</summary>
    public const string Empty = "empty";

    /// <summary>The same, of pads that print text.</summary>
    public const string EmptyText = "empty-text";

    public static IReadOnlyDictionary<string, Scene> All { get; } = new Dictionary<string, Scene>
    {
        ["steady"] = new("LF=pad-frames,RF=modbus,LR=text,RR=modbus", [], []),
        ["pads-damaged"] = new("pad-frames",
            [Order("garble", "LF", "\"bit_error_rate\":0.01"), Order("truncate", "RF", "\"share\":0.3"), Order("noise", "LR", "\"share\":0.4"), Order("duplicate", "RR", "\"share\":1")],
            [Order("garble", "LF", "\"bit_error_rate\":0"), Order("truncate", "RF", "\"share\":0"), Order("noise", "LR", "\"share\":0"), Order("duplicate", "RR", "\"share\":0"), Order("skip-sequence", "RR", "\"by\":1000")]),
        ["pads-interrupted"] = new("pad-frames",
            [Order("unplug", "LF"), Order("freeze", "RF"), Order("brown-out", "LR"), Order("garble", "RR", "\"bit_error_rate\":0.5")],
            [Order("replug", "LF"), Order("freeze", "RF", "\"on\":false"), Order("garble", "RR", "\"bit_error_rate\":0")])
        {
            Timed = ["RF SL-106", "LR SL-106"],
        },
        ["text-damaged"] = new("text",
            [Order("garble", "LF", "\"bit_error_rate\":0.01"), Order("truncate", "RF", "\"share\":0.5"), Order("noise", "LR", "\"share\":0.6"), Order("unplug", "RR")],
            [Order("garble", "LF", "\"bit_error_rate\":0"), Order("truncate", "RF", "\"share\":0"), Order("noise", "LR", "\"share\":0"), Order("replug", "RR")]),
        ["text-interrupted"] = new("text",
            [Order("freeze", "LF"), Order("brown-out", "RF"), Order("garble", "LR", "\"bit_error_rate\":0.5"), Order("duplicate", "RR", "\"share\":1")],
            [Order("freeze", "LF", "\"on\":false"), Order("garble", "LR", "\"bit_error_rate\":0"), Order("duplicate", "RR", "\"share\":0")])
        {
            Timed = ["LF SL-106", "RF SL-106"],
        },
        ["bus-refused"] = new("modbus",
            [Order("exception", "LF", "\"code\":4"), Order("silence", "RF", "\"seconds\":1.5"), Order("twin", "LR"), Order("wrong-check", "RR", "\"share\":1")],
            [Order("exception", "LF", "\"code\":0"), Order("twin", "LR", "\"on\":false"), Order("wrong-check", "RR", "\"share\":0")])
        {
            Timed = ["RF SL-211", "RR SL-201"],
        },
        ["bus-damaged"] = new("modbus",
            ["""{"do":"echo","on":true}""", Order("garble", "LF", "\"bit_error_rate\":0.02"), Order("truncate", "RF", "\"share\":0.5"), Order("noise", "LR", "\"share\":0.5"), Order("freeze", "RR")],
            [Order("garble", "LF", "\"bit_error_rate\":0"), Order("truncate", "RF", "\"share\":0"), Order("noise", "LR", "\"share\":0"), Order("freeze", "RR", "\"on\":false")])
        {
            Timed = ["LF SL-201", "RF SL-201", "RR SL-211"],
        },
        ["tilt-and-stranger"] = new("pad-frames", [Order("self-test", "LF", "\"fault\":\"tilt\""), Order("self-test", "RR", "\"fault\":\"converter\"")], [Order("self-test", "RR", "\"fault\":\"converter\",\"on\":false")])
        {
            Tilt = "bus",
            Edit = ("SLP-1002", "SLP-2002"),
        },
    };

    private static string Order(string deed, string corner, string more = "") => $$"""{"do":"{{deed}}","corner":"{{corner}}"{{(more.Length > 0 ? "," + more : "")}}}""";
}
