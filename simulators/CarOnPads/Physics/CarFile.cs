using System.Text.Json;
using System.Text.Json.Serialization;
using CarOnPads.Runtime;

namespace CarOnPads.Physics;

/// <summary>Reads and checks a car file.</summary>
static class CarFile
{
    static readonly JsonSerializerOptions s_json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectRequiredConstructorParameters = true,
        ReadCommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
    };

    /// <summary>The demo car that is shipped with the program.</summary>
    public static CarDescription Heron() => Read(Path.Combine(AppContext.BaseDirectory, "Cars", "heron.json"));

    /// <summary>Reads a file.</summary>
    /// <exception cref="SimulatorException">CP-101 unreadable, CP-102 not a car, CP-103 a number that no car has.</exception>
    public static CarDescription Read(string path)
    {
        try
        {
            return Parse(File.ReadAllText(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new SimulatorException("CP-101", $"The car file {path} cannot be read: {e.Message}", "Check the path and its permissions.");
        }
    }

    /// <summary>Reads a text.</summary>
    /// <exception cref="SimulatorException">CP-102 not a car, CP-103 a number that no car has.</exception>
    public static CarDescription Parse(string json)
    {
        try
        {
            var car = JsonSerializer.Deserialize<CarDescription>(json, s_json)
                ?? throw new JsonException("the file says null");
            CarCheck.Check(car);
            return car;
        }
        catch (JsonException e)
        {
            throw new SimulatorException("CP-102", $"This is no car file: {e.Message}", "Compare it with Cars/heron.json; docs/simulator.md lists the fields.");
        }
    }
}
