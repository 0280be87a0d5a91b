namespace ScaleLink.Weighing.Statics;

/// <summary>What a car brings to the pads: mass, where its centre is, and what twist is built into it.</summary>
/// <param name="TotalKg">Total mass, kg.</param>
/// <param name="CgX">Centre of gravity, mm forward of the front axle (negative: behind it), as the car stands on a level patch.</param>
/// <param name="CgY">Centre of gravity, mm left of the centreline.</param>
/// <param name="BuiltInWarpMm">
/// What the four free heights of the corners have of the warp pattern, summed with that pattern, mm: perch positions, spring
/// lengths, tyre sizes, twist of the body, bar preload, friction since the last settling.
/// </param>
readonly record struct Stance(double TotalKg, double CgX, double CgY, double BuiltInWarpMm);
