using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Pads;

public class TiltCorrectionTests
{
    // Source: projection F cos(theta); the figures are those of tests/reference/gravity-normal.json, tilt_cosine.
    [Theory]
    [InlineData(0.1, -1.52309e-06)]
    [InlineData(0.5, -3.80769e-05)]
    [InlineData(1.0, -0.000152305)]
    public void The_cosine_is_the_published_one_about_either_axis(double degrees, double relativeError)
    {
        Assert.Equal(relativeError, TiltCorrection.Cosine(degrees, 0) - 1, 9);
        Assert.Equal(relativeError, TiltCorrection.Cosine(0, -degrees) - 1, 9);
    }

    [Fact]
    public void One_degree_under_a_front_wheel_is_forty_grams() =>
        Assert.Equal(0.043, TiltCorrection.Size(280, 1, 0)!.Value, 3);

    [Fact]
    public void Corrected_loads_do_not_depend_on_the_tilt()
    {
        // A pad whose normal leans by pitch and roll reads the vertical force times the cosine between them.
        var (pitch, roll) = (double.DegreesToRadians(1.5), double.DegreesToRadians(-2));
        var normal = (X: Math.Tan(pitch), Y: -Math.Tan(roll), Z: 1.0);
        var read = 300 * normal.Z / Math.Sqrt(normal.X * normal.X + normal.Y * normal.Y + 1);
        Assert.Equal(300, read + TiltCorrection.Size(read, 1.5, -2)!.Value, 9);
    }

    [Fact]
    public void Beyond_the_limit_nothing_is_corrected() => Assert.Null(TiltCorrection.Size(300, 2.5, 2.5));
}
