
namespace ScaleLink.Weighing.Levelling;

/// <summary>Four heights as a plane and a rest.</summary>
/// <param name="NoseUpDeg">Slope along x, degrees: positive when the front pads are high.</param>
/// <param name="LeftUpDeg">Slope along y, degrees: positive when the left pads are high.</param>
/// <param name="WarpMm">Above the plane at LF and RR, below it at RF and LR (equal tracks), mm.</param>
sealed record PatchShape(Value NoseUpDeg, Value LeftUpDeg, Value WarpMm);
