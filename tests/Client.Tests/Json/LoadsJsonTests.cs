using System.Text.Json;
using ScaleLink.Api.V1;
using ScaleLink.Client.Json;
using Shared;

namespace Client.Tests.Json;

public class LoadsJsonTests
{
    private static readonly Diagnostic Away = new(Code.Read("SL-420"), "No daemon answers at http://127.0.0.1:5481.", "Start the daemon, or give its address with --daemon.");

    [Fact]
    public void Live_loads_have_the_approved_shape() => Approve("loads-live", LoadsJson.Of(Readouts.Live(Readouts.Settled())));

    [Fact]
    public void Held_loads_stand_under_another_name_and_carry_no_verdict()
    {
        var json = Write(LoadsJson.Of(Readouts.Held(Readouts.Settled(), 12.5, Away)));
        Approved.Matches(Indented(json), "tests", "Client.Tests", "Json", "loads-held.approved.json");
        using var document = JsonDocument.Parse(json);
        Assert.False(document.RootElement.TryGetProperty("reading", out _));
        Assert.False(document.RootElement.GetProperty("held_reading").TryGetProperty("verdict", out _));
    }

    [Fact]
    public void What_is_not_known_is_left_out() =>
        Assert.Equal("""{"state":"absent","trouble":{"code":"SL-420","message":"No daemon answers at http://127.0.0.1:5481.","remedy":"Start the daemon, or give its address with --daemon."}}""", Write(LoadsJson.Of(Readouts.Absent<Loads>(Away))));

    [Fact]
    public void A_raised_car_has_no_loads_in_it()
    {
        var json = Write(LoadsJson.Of(Readouts.Live(Readouts.Without(Verdict.Raised, "The pads are empty."))));
        Assert.DoesNotContain("_kg\":{", json);
        Assert.Contains("\"verdict\":\"raised\"", json);
    }

    private static void Approve(string name, LoadsJson loads) => Approved.Matches(Indented(Write(loads)), "tests", "Client.Tests", "Json", $"{name}.approved.json");

    private static string Write(LoadsJson loads) => JsonSerializer.Serialize(loads, ClientJson.Default.LoadsJson);

    private static string Indented(string json) => JsonSerializer.Serialize(JsonDocument.Parse(json).RootElement, s_indented);

    private static readonly JsonSerializerOptions s_indented = new() { WriteIndented = true };
}
