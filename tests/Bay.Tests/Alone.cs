using Shared;

namespace Bay.Tests;

/// <summary>Tests that a busy machine would disturb: no other bay of this project, and nothing loud of another, runs meanwhile. All others run beside each other; they mostly wait for a car to settle.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone : ICollectionFixture<QuietMachine>
{
    public const string Name = "alone";
}
