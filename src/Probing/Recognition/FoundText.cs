namespace ScaleLink.Probing.Recognition;

/// <summary>A device that prints lines with numbers.</summary>
internal sealed record FoundText : Found
{
    public override string Protocol => "text-lines";

    public override string Summary => $"{Lines.Count} lines of text; the pattern fits {Fitting} of them{(HasXor ? ", and their checksum is right" : "")}";

    /// <summary>How its lines are read.</summary>
    public required TextReading Reading { get; init; }

    /// <summary>Whole lines heard, without what wraps them.</summary>
    public required IReadOnlyList<string> Lines { get; init; }

    /// <summary>How many of them the daemon's own decoder reads with <see cref="Pattern"/>.</summary>
    public required int Fitting { get; init; }

    /// <summary>The numbers of a line, in their order.</summary>
    public required IReadOnlyList<FoundNumber> Numbers { get; init; }

    /// <summary>Which of them the pattern takes for the load, counted from 1.</summary>
    public required int Load { get; init; }

    /// <summary>Why that one, in words that go on from "because".</summary>
    public required string Why { get; init; }

    /// <summary>As in the bay file.</summary>
    public required string Pattern { get; init; }

    /// <summary>The pattern for each other number that may be the load instead, by its position.</summary>
    public required IReadOnlyDictionary<int, FoundText> Others { get; init; }

    /// <summary>Whether the line carries a checksum that is right.</summary>
    public required bool HasXor { get; init; }

    /// <summary>The one character that ends a line; nothing when CR or LF do.</summary>
    public char? End { get; init; }

    /// <summary>Words for a state (at rest, moving, beyond the range) that were heard.</summary>
    public IReadOnlyList<string> States { get; init; } = [];

    /// <summary>Words for net and gross that were heard.</summary>
    public IReadOnlyList<string> NetAndGross { get; init; } = [];

    /// <summary>Whether at one place it was net in some lines and gross in others.</summary>
    public bool MixesNetAndGross { get; init; }

    /// <summary>The unit of the load, as in the bay file; nothing when none stands beside it.</summary>
    public string? Unit => Numbers[Load - 1].Unit;

    /// <summary>Whether a person has to say which number is the load.</summary>
    public bool IsToBeAsked => Others.Count > 0;

    /// <summary>The same lines with that number for the load; nothing when it cannot be.</summary>
    public FoundText? Taking(int position) => position == Load ? this : Others.GetValueOrDefault(position);

    /// <summary>The same lines with these numbers for the cells of the pad; nothing when they cannot be.</summary>
    public FoundText? Taking(IReadOnlyList<int> positions) => Reading.Take(positions);

    /// <summary>The same lines with all numbers that may be the load, and are alike, for the cells of one pad; nothing when there is only one.</summary>
    public FoundText? TakingAll() => Numbers.Where(n => n.MayBeLoad && n.Unit == Unit && n.Least < n.Largest).Select(n => n.Position).ToList() is { Count: > 1 } alike ? Reading.Take(alike) : null;

    public override IReadOnlyList<string> Remarks =>
    [
        .. IsToBeAsked ? new[] { $"A line has several numbers. Taken for the load is {Numbers[Load - 1].Describe()}, because {Why}." } : [],
        .. Others.Values.Select(o => $"It may also be {o.Numbers[o.Load - 1].Describe()}."),
        .. States.Count > 0 ? new[] { $"Taken for words of the device's state: {string.Join(", ", States)}. The pattern takes those for at rest and moving; with one for beyond the range the pad reports a fault (common practice: compare with the manual)." }
            : ["No word for a moving load was heard. Press on the pad while it is listened to, so that such a word is heard too."],
        .. MixesNetAndGross ? new[] { $"{string.Join(" and ", NetAndGross)} were heard in one place: net and gross are two numbers. Leave the device on one of them and listen again." }
            : NetAndGross.Count > 0 ? [$"{string.Join(", ", NetAndGross)} {(NetAndGross.Count == 1 ? "stays" : "stay")} as heard: with another word in its place a line is refused, so that a tare at the device cannot move the load unseen."] : [],
        .. Unit is null ? new[] { "No unit of mass is beside the number: its loads count as counts, and the pad gives no load until its first calibration procedure has found its sensitivity (docs/calibration.md)." } : [],
        .. HasXor ? [] : new[] { "The lines carry no checksum that is known here: a wrong digit does not show. Switch one on in the device if it has one." },
    ];
}
