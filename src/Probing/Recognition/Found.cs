namespace ScaleLink.Probing.Recognition;

/// <summary>Something that was recognised on a port, or why nothing was.</summary>
internal abstract record Found
{
    /// <summary>As in the bay file; nothing when it is not known.</summary>
    public abstract string? Protocol { get; }

    /// <summary>What speaks for it, in one line.</summary>
    public abstract string Summary { get; }

    /// <summary>What a person should know or do besides.</summary>
    public virtual IReadOnlyList<string> Remarks => [];
}

/// <summary>Nothing can be made of what was heard.</summary>
internal sealed record FoundNothing(string Why, params IReadOnlyList<string> ToDo) : Found
{
    public override string? Protocol => null;

    public override string Summary => Why;

    public override IReadOnlyList<string> Remarks => ToDo;
}
