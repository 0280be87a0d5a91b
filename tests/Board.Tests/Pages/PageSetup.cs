using Microsoft.Playwright;

namespace Board.Tests.Pages;

/// <summary>The device that opens the board.</summary>
internal sealed record PageSetup
{
    public int Width { get; init; } = 1280;
    public int Height { get; init; } = 800;
    public bool IsDark { get; init; }
    public bool IsBigScreen { get; init; }
    public bool IsPhone { get; init; }
    public string Path { get; init; } = "";

    public BrowserNewContextOptions Context => new()
    {
        ViewportSize = new ViewportSize { Width = Width, Height = Height },
        ColorScheme = IsDark ? ColorScheme.Dark : ColorScheme.Light,
        ReducedMotion = ReducedMotion.Reduce,
        HasTouch = IsPhone,
    };

    public string Query => IsBigScreen ? "?big=on" : "";
}
