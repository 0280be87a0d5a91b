namespace ScaleLink.Client.Probe;

/// <summary>What a port seems to speak.</summary>
/// <param name="Protocol">As in the bay file; nothing when it is not known.</param>
/// <param name="Summary">What speaks for it, in one line.</param>
/// <param name="Keys">Lines of the bay file that belong to the protocol.</param>
/// <param name="Remarks">What a person should know or do besides.</param>
internal sealed record Guess(string? Protocol, string Summary, IReadOnlyList<string> Keys, IReadOnlyList<string> Remarks)
{
    /// <summary>Nothing can be made of it.</summary>
    public static Guess None(string summary, params IReadOnlyList<string> remarks) => new(null, summary, [], remarks);

    /// <summary>Registers behind the pad's own keys: tables of their own in the bay file.</summary>
    public IReadOnlyList<string> Tables { get; init; } = [];
}
