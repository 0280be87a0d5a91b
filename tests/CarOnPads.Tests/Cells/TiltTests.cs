namespace CarOnPads.Tests.Cells;

public class TiltTests
{
    // A cell feels the component along its axis: F cos(tilt), whatever the direction of the tilt.
    [Theory]
    [InlineData(2, 0)]
    [InlineData(0, -3)]
    [InlineData(2, 1.5)]
    public void A_tilted_pad_reads_the_component_along_its_axis(double pitch, double roll)
    {
        using var bench = new Bench();
        bench.PutMass(400);
        bench.Do($$"""{"do":"pad-tilt","corner":"LF","pitch_deg":{{pitch}},"roll_deg":{{roll}}}""");
        var (p, r) = (pitch * Math.PI / 180, roll * Math.PI / 180);
        var cosine = 1 / Math.Sqrt(1 + Math.Pow(Math.Tan(p), 2) + Math.Pow(Math.Tan(r), 2));
        Assert.Equal(400 * cosine, bench.Kilograms(0.1), 0.0011);
        var sample = bench.Listen(0.1).Samples[^1];
        Assert.Equal(pitch, sample.PitchDegrees!.Value, 1e-9);
        Assert.Equal(roll, sample.RollDegrees!.Value, 1e-9);
    }

    [Fact]
    public void A_cell_beyond_its_converter_says_so()
    {
        using var bench = new Bench();
        bench.PutMass(700, 0.1, 0.1);
        var sample = bench.Listen(0.1).Samples[^1];
        Assert.Equal(ScaleLink.Protocol.PadFrames.PadStatus.Cell0AtLimit, sample.Status);
        Assert.Equal((1 << 19) - 1, sample[0]);
    }
}
