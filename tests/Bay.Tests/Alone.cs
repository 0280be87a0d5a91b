namespace Bay.Tests;

/// <summary>Tests that judge reaction times or losses: no other bay runs meanwhile. All others run three at a time; they mostly wait for a car to settle.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone
{
    public const string Name = "alone";
}
