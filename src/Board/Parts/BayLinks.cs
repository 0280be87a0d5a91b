namespace ScaleLink.Board.Parts;

/// <summary>The views in their order: where each stands, and what it is called.</summary>
internal static class BayLinks
{
    public static IReadOnlyList<(string Path, string Name)> All { get; } =
    [
        ("", "Live"), ("work-session", "Work session"), ("calibration", "Calibration"), ("car", "Car"), ("setup-sheet", "Setup sheet"), ("patch", "Patch"), ("record", "Record"), ("health", "Health"), ("device", "This device"),
    ];
}
