using ScaleLink.Api.V1;
using ScaleLink.Board.WorkSessions;
using ScaleLink.Measure;

namespace Board.Tests.WorkSessions;

/// <summary>What a voice says can be understood by who does not see the page.</summary>
public class SpokenTests
{
    [Theory]
    [InlineData("LR down 1⅝ turns, RF up ¾: then settle.", "left rear down 1 and 5 eighths turns, right front up 3 quarters: then settle.")]
    [InlineData("RR up ½.", "right rear up a half.")]
    [InlineData("50.0 ±0.2 %", "50.0 plus or minus 0.2 percent")]
    [InlineData("Hold still.", "Hold still.")]
    public void Corners_and_eighths_are_words(string shown, string said) => Assert.Equal(said, Spoken.Of(shown));

    [Fact]
    public void Settled_loads_begin_with_cross_weight_and_come_in_the_unit_of_the_device()
    {
        var loads = new Loads { CrossWeightPercent = new MeasuredValue { Estimate = 50.04, StandardUncertainty = 0.05 } };
        loads.Corners.Add(new CornerLoad { Corner = ScaleLink.Api.V1.Corner.Lf, LoadKg = new MeasuredValue { Estimate = 100, StandardUncertainty = 0.1 } });
        Assert.Equal("Settled. Cross weight 50.04 percent. left front 100.0.", HandsFree.Loads(loads, Unit.Kilogram));
        Assert.Contains("left front 220.5", HandsFree.Loads(loads, Unit.Pound));
    }
}
