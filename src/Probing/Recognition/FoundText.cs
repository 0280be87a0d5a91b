namespace ScaleLink.Probing.Recognition;

/// <summary>One number of a line, as all lines have it.</summary>
/// <param name="Position">Which one, counted from 1.</param>
/// <param name="Before">The text before it, in lower case.</param>
/// <param name="After">The text behind it, in lower case.</param>
/// <param name="Unit">The unit of mass behind it, as in the bay file: kg, lb, g; nothing when there is none.</param>
/// <param name="Largest">Largest value heard, without its sign.</param>
internal sealed record FoundNumber(int Position, string Before, string After, string? Unit, double Largest);

/// <summary>A device that prints lines with numbers.</summary>
internal sealed record FoundText : Found
{
    public override string Protocol => "text-lines";

    public override string Summary => $"{Lines} lines of text; the pattern fits {Fitting} of them{(HasXor ? ", and their checksum is right" : "")}";

    /// <summary>Whole lines heard.</summary>
    public required int Lines { get; init; }

    /// <summary>How many of them the daemon's own decoder reads with <see cref="Pattern"/>.</summary>
    public required int Fitting { get; init; }

    /// <summary>The numbers of a line, in their order.</summary>
    public required IReadOnlyList<FoundNumber> Numbers { get; init; }

    /// <summary>Which of them the pattern takes for the load, counted from 1.</summary>
    public required int Load { get; init; }

    /// <summary>As in the bay file.</summary>
    public required string Pattern { get; init; }

    /// <summary>Whether the line carries a checksum that is right.</summary>
    public required bool HasXor { get; init; }

    /// <summary>The unit of the load, as in the bay file; nothing when none stands beside it.</summary>
    public string? Unit => Numbers[Load - 1].Unit;

    public override IReadOnlyList<string> Remarks =>
    [
        .. Unit is null ? new[] { "No unit of mass is beside the number: its loads count as counts, and need kg_per_count or a calibration procedure with masses." } : [],
        .. HasXor ? [] : new[] { "The lines carry no checksum that is known here: a wrong digit does not show. Switch one on in the device if it has one." },
    ];
}
