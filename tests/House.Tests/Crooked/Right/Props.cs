using House.Tests.Crooked.Left;

namespace House.Tests.Crooked.Right;

/// <summary>Uses its neighbour in a signature only.</summary>
internal sealed class Props
{
    public string Name { get; init; } = "";

    public static Leaning? Back => null;
}
