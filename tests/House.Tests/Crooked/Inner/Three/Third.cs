using House.Tests.Crooked.Inner.One;

namespace House.Tests.Crooked.Inner.Three;

/// <summary>Closes it by what it catches.</summary>
internal sealed class Third
{
    public static bool Succeeds(Action act)
    {
        try
        {
            act();
            return true;
        }
        catch (FirstException)
        {
            return false;
        }
    }
}
