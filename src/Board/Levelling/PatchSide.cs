using ScaleLink.Api.V1;

namespace ScaleLink.Board.Levelling;

/// <summary>Two pads seen from a side: one axle from behind, or one side of the car from its left.</summary>
/// <param name="Name">Which two, seen from where.</param>
/// <param name="Left">The one at the left of the picture.</param>
/// <param name="Right">The one at the right.</param>
/// <param name="IsFromBehind">Whether roll is seen, or pitch.</param>
internal sealed record PatchSide(string Name, Corner Left, Corner Right, bool IsFromBehind)
{
    /// <summary>Seen from the left, the front of the car is at the left.</summary>
    public static IReadOnlyList<PatchSide> All { get; } =
    [
        new("Front axle, from behind", Corner.Lf, Corner.Rf, true),
        new("Rear axle, from behind", Corner.Lr, Corner.Rr, true),
        new("Left side, from the left", Corner.Lf, Corner.Lr, false),
        new("Right side, from the left", Corner.Rf, Corner.Rr, false),
    ];

    /// <summary>How far the bubble stands to the right, as a part of the way to the end of its glass: it swims to the high side. Absent: the tilt is not known.</summary>
    /// <remarks>Positive roll is right side down, positive pitch nose down (ISO 8855).</remarks>
    public double? Bubble(Pad? pad) => pad is { HasPitchDeg: true, HasRollDeg: true }
        ? Math.Clamp((IsFromBehind ? -pad.RollDeg : pad.PitchDeg) / PadBubble.FullDegrees, -1, 1)
        : null;
}
