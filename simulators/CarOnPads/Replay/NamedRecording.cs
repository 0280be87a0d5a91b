using CarOnPads.Runtime;
using ScaleLink.Protocol.Recordings;

namespace CarOnPads.Replay;

/// <summary>A link recording under the name of its file.</summary>
sealed record NamedRecording(string Name, LinkRecording LinkRecording)
{
    /// <summary>Reads a file.</summary>
    /// <exception cref="SimulatorException">CP-108 it cannot be read, or is no link recording.</exception>
    public static NamedRecording Read(string path)
    {
        try
        {
            return new NamedRecording(Path.GetFileNameWithoutExtension(path), LinkRecording.Parse(File.ReadAllText(path)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or FormatException)
        {
            throw new SimulatorException("CP-108", $"The link recording {path} cannot be played: {e.Message}", "Name a file as described in docs/recordings.md.");
        }
    }
}
