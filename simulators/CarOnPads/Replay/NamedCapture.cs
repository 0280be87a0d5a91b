using CarOnPads.Runtime;
using ScaleLink.Protocol.Captures;

namespace CarOnPads.Replay;

/// <summary>A capture under the name of its file.</summary>
sealed record NamedCapture(string Name, Capture Capture)
{
    /// <summary>Reads a file.</summary>
    /// <exception cref="SimulatorException">CP-108 it cannot be read, or is no capture.</exception>
    public static NamedCapture Read(string path)
    {
        try
        {
            return new NamedCapture(Path.GetFileNameWithoutExtension(path), Capture.Parse(File.ReadAllText(path)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or FormatException)
        {
            throw new SimulatorException("CP-108", $"The capture {path} cannot be played: {e.Message}", "Name a file as described in docs/captures.md.");
        }
    }
}
