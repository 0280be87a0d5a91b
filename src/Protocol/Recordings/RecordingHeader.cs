namespace ScaleLink.Protocol.Recordings;

/// <summary>What a link recording says of itself: where it was taken, from what, when and why. Free text but for <see cref="Started"/>; what is not known is empty.</summary>
sealed record RecordingHeader
{
    /// <summary>Name of the bay.</summary>
    public string Bay { get; init; } = "";

    /// <summary>The port, as the bay file names it.</summary>
    public string Link { get; init; } = "";

    /// <summary>What is spoken: pad-frames, modbus-rtu or text-lines.</summary>
    public string Protocol { get; init; } = "";

    /// <summary>Bits a second and parity of a serial port, such as <c>115200 none</c>.</summary>
    public string Line { get; init; } = "";

    /// <summary>Who is on the link: corner, serial number, firmware; one text for each.</summary>
    public IReadOnlyList<string> Devices { get; init; } = [];

    /// <summary>UTC of time 0.</summary>
    public DateTimeOffset? Started { get; init; }

    /// <summary>Names the run of the recorder; link recordings of one run share their clock.</summary>
    public string StartId { get; init; } = "";

    /// <summary>What wrote it.</summary>
    public string Software { get; init; } = "";

    /// <summary>Why it was written.</summary>
    public string Reason { get; init; } = "";

    /// <summary>Remarks of people, one text for each.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
}
