using System.Text.Json.Nodes;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Json;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;
using ScaleLink.Measure.Sentences;
using ScaleLink.Weighing.Cars.Files;

namespace ScaleLink.Client.Commands;

/// <summary>Files that the user names, and the mistakes in them.</summary>
internal static class InputFile
{
    private const int LongestLine = 1000;

    /// <exception cref="ClientException">SL-440: it cannot be read.</exception>
    public static string Read(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClientException(new Diagnostic(ClientCodes.FileUnreadable, $"{PeerText.Clean(path, 120)} cannot be read: {e.Message}", "Check the path and the rights."), e);
        }
    }

    /// <summary>A car file; one that is too large is not even read.</summary>
    /// <exception cref="ClientException">SL-440: it cannot be read. SL-559: it is too large.</exception>
    public static string ReadCar(string path) => new FileInfo(path) is { Exists: true, Length: > CarFileSize.Most } ? throw new ClientException(CarFile.TooLarge) : Read(path);

    /// <exception cref="ClientException">SL-445: it cannot be written.</exception>
    public static void Write(string path, ReadOnlySpan<byte> content)
    {
        try
        {
            File.WriteAllBytes(path, content);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClientException(new Diagnostic(ClientCodes.FileUnwritable, $"{PeerText.Clean(path, 120)} cannot be written: {e.Message}", "Check the folder and the rights, or name another file."), e);
        }
    }

    /// <summary>Tells the mistakes, as lines or as JSON; gives the exit code.</summary>
    public static int Refuse(string path, IReadOnlyList<Diagnostic> findings, bool json, Shell shell)
    {
        if (json)
            shell.WriteLine(new JsonObject { ["mistakes"] = new JsonArray([.. findings.Select(CarJson.Diagnostic)]) }.ToJsonString());
        else
            foreach (var line in Mistakes(path, findings))
                shell.Error.WriteLine(line);
        return ExitCodes.ToBeRemedied;
    }

    /// <summary>One line for each mistake: file, line, code, what is wrong, what to do.</summary>
    public static IEnumerable<string> Mistakes(string path, IEnumerable<Diagnostic> findings) =>
        findings.Select(f => PlainText.Clean($"{path}{(f.Line is { } line ? $":{line}" : "")}: {f}", LongestLine));
}
