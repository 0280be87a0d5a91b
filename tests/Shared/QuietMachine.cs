namespace Shared;

/// <summary>The machine when all that is loud is over, for collections that a busy machine would disturb.</summary>
public sealed class QuietMachine
{
    public QuietMachine(MachineTime machine)
    {
        ArgumentNullException.ThrowIfNull(machine);
        machine.Quiet();
    }
}
