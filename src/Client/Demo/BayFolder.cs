using System.Globalization;
using System.Text;
using ScaleLink.Probing.Toml;

namespace ScaleLink.Client.Demo;

/// <summary>A folder of its own for one demo: bay file, ledger and ports. Deleted at the end.</summary>
internal sealed class BayFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-demo-");

    public string Path => _folder.FullName;

    public string BayFile => System.IO.Path.Combine(Path, "bay.toml");

    public string PortFolder => System.IO.Path.Combine(Path, "ports");

    /// <summary>Writes the bay file for pads as the simulator named them, and the file of the car that stands on them.</summary>
    public void Write(SimulatedCar simulated, Ports ports)
    {
        var text = new StringBuilder(FormattableString.Invariant($"""
            bay = "unit6"

            [listen]
            page_port = {ports.Page}
            grpc_port = {ports.Grpc}

            [mqtt]
            broker = "embedded"
            port = {ports.Mqtt}

            [target]
            cross_weight_percent = 50.0
            tolerance_percent = 0.2

            [car]
            file = "heron.json"

            [ledger]
            path = "ledger.db"

            """));
        foreach (var (corner, link) in simulated.Ports)
        {
            text.Append(CultureInfo.InvariantCulture, $"""

                [[pads]]
                corner = {TomlText.Quoted(corner)}
                link = {TomlText.Quoted(link)}
                serial_number = {TomlText.Quoted(simulated.Serials[corner])}
                kg_per_count = {simulated.KgPerCount[corner]:R}
                span_uncertainty_percent = 0.25

                """);
        }

        File.WriteAllText(BayFile, text.ToString());
        using var car = File.Create(System.IO.Path.Combine(Path, "heron.json"));
        using var heron = typeof(BayFolder).Assembly.GetManifestResourceStream("heron.json")!;
        heron.CopyTo(car);
    }

    public void Dispose()
    {
        try
        {
            _folder.Delete(recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Another program looks into it; what is left lies among the temporary files.
        }
    }
}
