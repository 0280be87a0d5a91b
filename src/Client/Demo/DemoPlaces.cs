using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Demo;

/// <summary>What the demo says of itself.</summary>
internal static class DemoPlaces
{
    public static string Of(DemoBay bay) =>
        $"page http://127.0.0.1:{bay.Ports.Page}/, gRPC http://127.0.0.1:{bay.Ports.Grpc}, MQTT 127.0.0.1:{bay.Ports.Mqtt}";

    /// <summary>The same for the last line of a screen.</summary>
    public static string Short(DemoBay bay) =>
        $"page http://127.0.0.1:{bay.Ports.Page}/  gRPC :{bay.Ports.Grpc}  MQTT :{bay.Ports.Mqtt}  Ctrl-C ends";

    public static string Ending(CrewResult result, Glyphs glyphs)
    {
        var cross = Shown.Percent(result.Reading.CrossWeightPercent).Full(glyphs);
        return result.IsOnTarget
            ? $"Done: cross weight {cross} is on target after {Counted(result.Adjustments)}"
            : $"Given up after {Counted(result.Adjustments)} at cross weight {cross}";
    }

    private static string Counted(int adjustments) => adjustments == 1 ? "1 adjustment" : $"{adjustments} adjustments";
}
