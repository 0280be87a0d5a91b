namespace Board.Tests.Pages;

/// <summary>How a board is looked at.</summary>
internal sealed record PageSetup
{
    public int Width { get; init; } = 1280;
    public int Height { get; init; } = 800;
    public bool IsDark { get; init; }

    /// <summary>The view: empty for live, <c>health</c>, <c>device</c>.</summary>
    public string Path { get; init; } = "";
}
