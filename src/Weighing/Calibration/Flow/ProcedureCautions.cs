namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>Cautions to show wherever a pad is calibrated.</summary>
static class ProcedureCautions
{
    /// <summary>In the order to be read.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "Lift with two people or a hoist; keep hands and feet from under masses.",
        "Stack low and wide, and never load a pad beyond its capacity.",
        "Put masses down gently: a dropped mass can overload a cell for good.",
        "This equipment is not approved for trade weighing. Local codes and licensed practice come first.",
    ];
}
