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

    // Independent: errors drawn at random and put through the correction itself, as JCGM 101:2008 does it.
    [Theory]
    [InlineData(0, 0, 0.29)]
    [InlineData(1.2, -0.6, 0.29)]
    [InlineData(1.2, -0.6, 0.01)]
    public void Uncertainty_about_the_tilt_is_what_drawn_errors_do_to_the_correction(double pitch, double roll, double u)
    {
        const int Trials = 20000;
        var random = new Random(5);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());
        var square = 0.0;
        for (var k = 0; k < Trials; k++)
        {
            // What is read is the truth and an error; the correction goes by what is read.
            var error = TiltCorrection.Size(300, pitch, roll)!.Value - TiltCorrection.Size(300, pitch - u * Normal(), roll - u * Normal())!.Value;
            square += error * error;
        }

        var stated = TiltCorrection.Uncertainty(300, pitch, roll, u);
        Assert.Equal(Math.Sqrt(square / Trials), stated, 0.03 * stated);
    }
}
