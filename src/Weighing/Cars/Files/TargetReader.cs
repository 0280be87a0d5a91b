using ScaleLink.Weighing.Documents;

namespace ScaleLink.Weighing.Cars.Files;

/// <summary>Reads where the car should stand.</summary>
static class TargetReader
{
    public static CarTargets Read(JsonBlock? block)
    {
        var plain = new CarTargets();
        if (block is null)
            return plain;
        block.Earlier("side_difference_mm", "left_right_difference_mm");
        var targets = new CarTargets
        {
            CrossWeightPercent = block.Number("cross_weight_percent") ?? plain.CrossWeightPercent,
            CrossWeightTolerancePercent = block.Number("cross_weight_tolerance_percent") ?? plain.CrossWeightTolerancePercent,
            RideHeightsMm = block.Four("ride_heights_mm"),
            RakeMm = block.Length("rake_mm"),
            LeftRightDifferenceMm = block.Number("left_right_difference_mm"),
            RideHeightToleranceMm = block.Number("ride_height_tolerance_mm") ?? plain.RideHeightToleranceMm,
            RakeToleranceMm = block.Length("rake_tolerance_mm"),
        };
        block.Finish();
        return targets;
    }
}
