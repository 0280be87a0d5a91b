namespace ScaleLink.Client.WorkSessions.Guided;

/// <summary>What one key does in the guided session.</summary>
internal enum Act
{
    /// <summary>Begins a session with the car in the bay.</summary>
    Start,
    /// <summary>Ticks the check that is next, with the typed value.</summary>
    Tick,
    /// <summary>Leaves it out for the typed reason.</summary>
    LeaveOut,
    /// <summary>Ticks all that is open together.</summary>
    TickRest,
    /// <summary>Weighs as soon as the car has settled.</summary>
    Weigh,
    /// <summary>Records what is left of the plan.</summary>
    AsPlanned,
    /// <summary>Records what is left at one corner.</summary>
    One,
    /// <summary>Records the typed turns.</summary>
    Turned,
    /// <summary>Takes back what was recorded last.</summary>
    Undo,
    /// <summary>Puts the record right by a cause that was found.</summary>
    PutRight,
    /// <summary>Believes the step that surprised.</summary>
    Confirm,
    /// <summary>Nothing was changed.</summary>
    NameNothing,
    /// <summary>Something else was changed, as typed.</summary>
    NameOther,
    /// <summary>Perches were turned, as typed.</summary>
    NameTurns,
    /// <summary>Ends the session, for the typed reason where one is needed.</summary>
    Finish,
    /// <summary>Gives the session up for the typed reason.</summary>
    Abandon,
    /// <summary>Says that the cautions were read.</summary>
    ReadCautions,
    /// <summary>Shows the cautions in full, or in one line again.</summary>
    TellCautions,
    /// <summary>Leaves the screen; the session stays.</summary>
    Leave,
}

/// <summary>A key and what it does now.</summary>
/// <param name="Key">As it is typed, lower case; <see cref="Enter"/> for the next step.</param>
/// <param name="Words">For the crew.</param>
/// <param name="Act">What it does.</param>
/// <param name="Index">Which corner, in the order LF RF LR RR, or which cause.</param>
/// <param name="Question">What has to be typed first; empty: nothing.</param>
/// <param name="Value">What stands for the typed answer where nothing is asked.</param>
internal sealed record Offer(char Key, string Words, Act Act, int Index = 0, string Question = "", string Value = "")
{
    public const char Enter = '\r';

    /// <summary>As it stands on the screen.</summary>
    public string Label => $"{(Key == Enter ? "Enter" : Key.ToString())} {Words}";
}
