using System.Text.Json;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Demo;

/// <summary>What the simulator says of itself when it is ready. The keys are LF, RF, LR and RR.</summary>
internal sealed record SimulatedCar(string Control, IReadOnlyDictionary<string, string> Ports, IReadOnlyDictionary<string, double> KgPerCount, IReadOnlyDictionary<string, string> Serials)
{
    private static readonly JsonSerializerOptions Json = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower, RespectRequiredConstructorParameters = true };

    /// <exception cref="ClientException">SL-432: this is not the simulator's ready line.</exception>
    public static SimulatedCar Parse(string line)
    {
        try
        {
            return JsonSerializer.Deserialize<SimulatedCar>(line, Json)!;
        }
        catch (JsonException e)
        {
            throw new ClientException(new Diagnostic(DemoCodes.NotReady, $"The simulator began with \"{PeerText.Clean(line, 120)}\".", "Build client and simulator from the same checkout."), e);
        }
    }
}
