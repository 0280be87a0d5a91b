using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;

namespace Client.Tests.Readings;

public class ShownTests
{
    [Fact]
    public void A_terminal_without_signs_says_the_same_in_plain_ones()
    {
        var difference = Readouts.Measured(-37.14, 0.4);
        Assert.Equal("\u221237.1 kg ± 0.4 kg", Shown.Kg(difference, Glyphs.Rich, isSigned: true).Full(Glyphs.Rich));
        Assert.Equal("-37.1 kg +- 0.4 kg", Shown.Kg(difference, Glyphs.Rich, isSigned: true).Full(Glyphs.Plain));
        Assert.Equal("~51.4", Shown.Percent(Readouts.Measured(51.3724, null)).Bare(Glyphs.Plain));
    }

    [Fact]
    public void Live_loads_are_never_finer_than_a_tenth()
    {
        Assert.Equal("280.12 ± 0.04", Shown.Kg(Readouts.Measured(280.1234, 0.04), Glyphs.Rich).Bare(Glyphs.Rich));
        Assert.Equal("280.1 ± 0.1", Shown.LiveKg(Readouts.Measured(280.1234, 0.04), Glyphs.Rich).Bare(Glyphs.Rich));
    }
}
