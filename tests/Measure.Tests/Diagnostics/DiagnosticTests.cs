using System.Text.Json;
using ScaleLink.Measure.Diagnostics;

namespace Measure.Tests.Diagnostics;

public class DiagnosticTests
{
    [Fact]
    public void The_code_stands_at_the_end_of_the_sentence() =>
        Assert.Equal("The tilt sensor has failed. Check the cable. (SL-207)", new Diagnostic(PadCodes.TiltSensorFailed, "The tilt sensor has failed.", "Check the cable.").ToString());

    [Fact]
    public void What_is_not_there_leaves_no_gap()
    {
        Assert.Equal("Waiting. (SL-420)", new Diagnostic(ConnectionCodes.NoAnswer, "Waiting.").ToString());
        Assert.Equal("Waiting.", new Diagnostic(Code.Read(""), "Waiting.").ToString());
    }

    [Fact]
    public void A_case_goes_on_with_the_meaning_and_keeps_the_remedy() =>
        Assert.Equal("The pad is tilted: 2.0°, 1.0° allowed. Level the pad before it is calibrated; a tilted cell reads less than the load. (SL-313)",
            CalibrationCodes.PadTilted.Because("2.0°, 1.0° allowed").ToString());

    [Fact]
    public void A_code_that_was_read_is_the_one_of_the_catalogue_by_its_text()
    {
        Assert.True(Code.Read("SL-101") == LinkCodes.PortMissing);
        Assert.True(Code.Read("SL-102") != LinkCodes.PortMissing);
        Assert.Equal(LinkCodes.PortMissing.GetHashCode(), Code.Read("SL-101").GetHashCode());
        Assert.True(LinkCodes.Area.Holds(Code.Read("SL-101")));
        Assert.False(PadCodes.Area.Holds(Code.Read("SL-101")));
    }

    [Fact]
    public void Json_tells_where_and_line_only_when_there_are_any()
    {
        var whole = new Diagnostic(CarCodes.MissingField, "It is missing.", "Add it.") { Where = "front", Line = 7 };
        Assert.Equal("""{"code":"SL-514","message":"It is missing.","remedy":"Add it.","where":"front","line":7}""", JsonSerializer.Serialize(whole));
        Assert.Equal("""{"code":"SL-514","message":"It is missing.","remedy":"Add it."}""", JsonSerializer.Serialize(whole with { Where = "", Line = null }));
        Assert.Equal(whole, JsonSerializer.Deserialize<Diagnostic>(JsonSerializer.Serialize(whole)));
    }

    [Fact]
    public void Each_reason_of_a_refusal_stands_on_a_line_of_its_own()
    {
        var (one, two) = (new Diagnostic(CarCodes.Fuel, "No fuel.", "Add it."), new Diagnostic(CarCodes.Driver, "No driver.", "Add one."));
        Assert.Equal(["No fuel. Add it. (SL-556)", "No driver. Add one. (SL-557)"], new DiagnosticException(one, two).Message.ReplaceLineEndings("\n").Split('\n'));
    }
}
