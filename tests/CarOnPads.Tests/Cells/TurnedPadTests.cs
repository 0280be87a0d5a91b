using CarOnPads.Cells;
using CarOnPads.Pads;
using CarOnPads.Physics;
using CarOnPads.Runtime;

namespace CarOnPads.Tests.Cells;

/// <summary>A pad turned by half a turn about the vertical. Plain geometry: what belongs to the ground changes its sign in the pad's axes, what belongs to the pad does not.</summary>
public class TurnedPadTests
{
    [Fact]
    public void The_grounds_tilt_comes_from_the_other_side_and_the_zero_stays()
    {
        using var bench = new Bench();
        bench.Do("""{"do":"pad-tilt","corner":"LF","pitch_deg":0.6,"roll_deg":-0.25}""");
        bench.Do("""{"do":"tilt-zero","corner":"LF","pitch_deg":0.3,"roll_deg":0.1}""");
        Assert.Equal((0.9, -0.15), Tilt(bench));
        bench.Do("""{"do":"turn-pad","corner":"LF"}""");
        Assert.InRange(bench.Listen(1.2).Samples.Max(s => s.PitchDegrees!.Value), 5, 12);
        bench.Run(0.6);
        Assert.Equal((-0.3, 0.35), Tilt(bench));
        bench.Do("""{"do":"turn-pad","corner":"LF"}""");
        bench.Run(1.6);
        Assert.Equal((0.9, -0.15), Tilt(bench));
    }

    [Fact]
    public void A_mass_over_the_front_left_cell_stands_over_the_rear_right_one()
    {
        using var bench = new Bench();
        bench.Do("""{"do":"turn-pad","corner":"LF"}""");
        bench.Run(1.6);
        bench.PutMass(40, Platform.Reach / 2, Platform.Reach / 2);
        var sample = bench.Listen(0.1).Samples[^1];
        Assert.True(sample[3] > 4 * Math.Abs(sample[0]), $"{sample[0]}, {sample[3]}");
        Assert.Equal(40, bench.Kilograms(0.1), 0.001);
    }

    [Fact]
    public void Seating_leaves_a_hair_at_each_putting_down()
    {
        using var bench = new Bench("seating");
        List<double> pitches = [];
        for (var k = 0; k < 40; k++)
        {
            bench.Do("""{"do":"turn-pad","corner":"LF"}""");
            bench.Run(1.6);
            pitches.Add(Tilt(bench).Pitch);
        }

        Assert.InRange(Math.Sqrt(pitches.Average(p => p * p)), 0.6 * Seat.RepeatabilityDegrees, 1.5 * Seat.RepeatabilityDegrees);
    }

    [Theory]
    [InlineData("LF", "CP-105")]
    [InlineData("LF=0.3", "CP-105")]
    [InlineData("LF=0.3/9", "CP-105")]
    [InlineData("FL=0.3/0", "CP-107")]
    public void A_wrong_list_of_zeros_is_refused(string text, string code) => Assert.Equal(code, Assert.Throws<SimulatorException>(() => TiltZeros.Parse(text)).Code);

    [Fact]
    public void A_list_of_zeros_names_pads()
    {
        var zeros = TiltZeros.Parse("LF=0.3/-0.2, RR=-0.1/0");
        Assert.Equal((0.3, -0.2), zeros[Wheel.LF]);
        Assert.Equal((-0.1, 0.0), zeros[Wheel.RR]);
        Assert.Equal(2, zeros.Count);
    }

    static (double Pitch, double Roll) Tilt(Bench bench) =>
        bench.Listen(0.1).Samples[^1] is var s ? (Math.Round(s.PitchDegrees!.Value, 3), Math.Round(s.RollDegrees!.Value, 3)) : default;
}
