namespace Board.Tests.Pages;

/// <summary>The views of the board by their addresses.</summary>
internal static class Views
{
    public static string[] All { get; } = ["", "work-session", "calibration", "car", "setup-sheet", "patch", "record", "health", "device"];

    /// <summary>The same for theories.</summary>
    public static TheoryData<string> Each { get; } = [.. All];
}
