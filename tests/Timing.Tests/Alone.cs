namespace Timing.Tests;

/// <summary>
/// This project judges times, and so runs when all that is loud is over (<see cref="Shared.MachineTime"/>), a few bays beside each other. What carries as
/// many samples as it can, or judges milliseconds, has no other bay of this project beside it.
/// </summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class Alone
{
    public const string Name = "alone";
}
