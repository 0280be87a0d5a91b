using House.Tests.Crooked.Inner.Three;

namespace House.Tests.Crooked.Inner.Two;

/// <summary>Goes on through a type argument.</summary>
internal class Second
{
    public List<Third> Next { get; } = [];
}
