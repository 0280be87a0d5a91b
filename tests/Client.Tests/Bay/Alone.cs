using Shared;

namespace Client.Tests.Bay;

/// <summary>Tests that judge how fast the pads of a real bay come: no other bay of this project, and nothing loud of another, runs meanwhile.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone : ICollectionFixture<QuietMachine>
{
    public const string Name = "alone";
}
