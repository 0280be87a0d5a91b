using ScaleLink.Weighing.Pads;
using ScaleLink.Weighing.Statistics;

namespace ScaleLink.Daemon.Configuration;

/// <summary>Reads the [place] block: where the bay stands, for its gravity.</summary>
internal static class PlaceReader
{
    // Standard gravity, and how far a workshop anywhere between equator and pole may be from it, relative.
    private const double Standard = 9.80665, Anywhere = 0.0027;
    // A value from a gravimeter or a height measurement is good to a millionth at least.
    private const double Measured = 1e-6;

    public static Place Read(TomlBlock block, string bay)
    {
        var name = block.Text("name") ?? bay;
        var latitude = block.Number("latitude_deg", -90, 90);
        var height = block.Number("height_m", -500, 6000);
        var gravity = block.Number("gravity_mps2", 9.75, 9.85);
        if (gravity is not null && latitude is not null)
            block.Note(ConfigurationCodes.ValueUnusable, block.LineOf("gravity_mps2"), "place gives both a gravity and a latitude.", "Keep the one that is known better.");
        if (height is not null && latitude is null)
            block.Note(ConfigurationCodes.KeyMissing, block.Line, "place.height_m stands without place.latitude_deg.", "Add latitude_deg.");
        block.Finish();
        return (gravity, latitude) switch
        {
            ({ } g, _) => new Place(name, g, TypeB.Rectangular(Measured)),
            (_, { } degrees) => Place.On(name, degrees, height ?? 0),
            _ => new Place(name, Standard, TypeB.Rectangular(Anywhere)),
        };
    }
}
