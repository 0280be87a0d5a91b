using House.Tests.Crooked.Right;

namespace House.Tests.Crooked.Left;

/// <summary>Uses its neighbour in a method body only.</summary>
internal sealed class Leaning
{
    public override string ToString() => new Props().Name;
}
