namespace ScaleLink.Weighing.Cars;

/// <summary>Work that cannot be done on the input given. Every finding is listed, not only the first.</summary>
public sealed class FindingException : Exception
{
    /// <summary>Refuses for these reasons; at least one.</summary>
    public FindingException(params IReadOnlyList<Finding> findings)
        : base(string.Join(Environment.NewLine, findings)) => Findings = findings;

    /// <summary>All the reasons.</summary>
    public IReadOnlyList<Finding> Findings { get; }
}
