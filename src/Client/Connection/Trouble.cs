namespace ScaleLink.Client.Connection;

/// <summary>Something that a user can meet: a code that stays the same, what is wrong, and what to do next.</summary>
public sealed record Trouble(string Code, string Message, string Mend)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Code}: {Message} {Mend}".TrimEnd();
}
