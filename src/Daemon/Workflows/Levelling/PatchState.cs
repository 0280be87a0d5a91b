using ScaleLink.Weighing.Levelling;

namespace ScaleLink.Daemon.Workflows.Levelling;

/// <summary>What is known of the patch at one instant.</summary>
/// <param name="HeightMeasurement">Null: the pads were not measured, or were moved since.</param>
/// <param name="On">Corrections that the crew has switched on.</param>
internal sealed record PatchState(SavedHeightMeasurement? HeightMeasurement, IReadOnlyList<CorrectionKind> On)
{
    /// <summary>The corrections that a height measurement allows; tilt is each pad's own matter.</summary>
    public static IReadOnlyList<CorrectionKind> Kinds { get; } = [CorrectionKind.Slope, CorrectionKind.Warp];

    /// <summary>Corrections that are switched off, tilt among them.</summary>
    public IReadOnlyList<CorrectionKind> Off => [.. Enum.GetValues<CorrectionKind>().Where(k => !On.Contains(k))];
}
