namespace ScaleLink.Api;

/// <summary>
/// How a caller learns what became of a step whose answer was lost. Calls of the services that end in <c>Control</c> may carry a number that the caller
/// makes up, in <see cref="Number"/>. The same call again with <see cref="Ask"/> takes no step: it gives the answer of the first one where that is
/// known, and otherwise fails with SL-429 (still under way: ask again), SL-427 (not on record, and never will be under this number) or SL-428 (on record; the
/// answer itself is lost, since the daemon was started again).
/// </summary>
public static class WireSteps
{
    /// <summary>Metadata: the step's number, 1 to 64 letters and digits; one that nobody used before.</summary>
    public const string Number = "scalelink-step";

    /// <summary>Metadata, of any value: nothing is to be done, the caller only asks.</summary>
    public const string Ask = "scalelink-step-ask";

    /// <summary>Longest number of a step.</summary>
    public const int LongestNumber = 64;
}
