using ScaleLink.Measure;
using ScaleLink.Api.V1;
using ScaleLink.Board.Readings;

namespace Board.Tests.Readings;

public class ShownTests
{
    [Fact]
    public void A_correction_is_told_by_its_size_at_the_wheel_that_it_changes_most()
    {
        var slope = new PatchInReading { Name = "slope", SizeKg = new CornerNumbers { Lf = 1.24, Rf = -1.36, Lr = 0.5, Rr = -0.4 } };
        Assert.Equal("slope 1.4 kg corrected", Shown.Correction(slope, Unit.Kilogram));
        Assert.Equal("slope 3.0 lb corrected", Shown.Correction(slope, Unit.Pound));
        Assert.Equal("warp not corrected: refused", Shown.Correction(new PatchInReading { Name = "warp" }, Unit.Kilogram));
    }
}
