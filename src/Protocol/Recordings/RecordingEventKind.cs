namespace ScaleLink.Protocol.Recordings;

/// <summary>What happened on a link at one instant. The word of each in a link recording is its name in lower case, with a hyphen between words.</summary>
enum RecordingEventKind
{
    /// <summary>Bytes came.</summary>
    Received,
    /// <summary>Bytes were sent.</summary>
    Sent,
    /// <summary>The port was opened.</summary>
    Open,
    /// <summary>The port could not be opened.</summary>
    NotOpen,
    /// <summary>The port went away while it was open.</summary>
    HangUp,
    /// <summary>Something was found wrong.</summary>
    Fault,
    /// <summary>A fault was over.</summary>
    FaultOver,
    /// <summary>Somebody's remark.</summary>
    Note,
}
