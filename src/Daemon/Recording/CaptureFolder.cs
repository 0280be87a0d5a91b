using System.Globalization;
using System.Text.RegularExpressions;
using ScaleLink.Daemon.Configuration;
using Capture = ScaleLink.Protocol.Captures.Capture;

namespace ScaleLink.Daemon.Recording;

/// <summary>A capture on the disk.</summary>
internal sealed record CaptureFile(string Name, DateTimeOffset WrittenAt, long Bytes);

/// <summary>The folder of captures. It keeps so many; the oldest go first. Thread-safe.</summary>
internal sealed partial class CaptureFolder(RecorderConfiguration recorder)
{
    private const string TimeFormat = "yyyyMMdd'T'HHmmss'Z'";

    private readonly Lock _gate = new();

    /// <summary>Where it is.</summary>
    public string Path => recorder.Folder;

    /// <summary>Writes a capture whole or not at all, then lets go of the oldest.</summary>
    /// <exception cref="IOException">The disk is full, or the folder cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    public CaptureFile Save(Capture capture, string link, string reason, DateTimeOffset now)
    {
        lock (_gate)
        {
            Directory.CreateDirectory(Path);
            var name = FreeName($"{now.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture)}-{link}-{reason}");
            var (path, unfinished) = (System.IO.Path.Combine(Path, name), System.IO.Path.Combine(Path, name + ".part"));
            File.WriteAllText(unfinished, capture.ToText());
            File.Move(unfinished, path);
            foreach (var old in Files().Skip(recorder.Files))
                old.Delete();
            return Describe(new FileInfo(path));
        }
    }

    /// <summary>The captures, newest first.</summary>
    public IReadOnlyList<CaptureFile> List()
    {
        lock (_gate)
            return [.. Files().Select(Describe)];
    }

    /// <summary>The text of one; nothing when there is none of that name.</summary>
    public string? Read(string name)
    {
        // The name comes from outside: it may not lead anywhere else.
        if (!NamePattern().IsMatch(name))
            return null;
        lock (_gate)
        {
            var path = System.IO.Path.Combine(Path, name);
            return File.Exists(path) ? File.ReadAllText(path) : null;
        }
    }

    private string FreeName(string stem)
    {
        var name = stem + Capture.Extension;
        for (var copy = 2; File.Exists(System.IO.Path.Combine(Path, name)); copy++)
            name = $"{stem}-{copy}{Capture.Extension}";
        return name;
    }

    private IEnumerable<FileInfo> Files() => Directory.Exists(Path)
        ? new DirectoryInfo(Path).EnumerateFiles("*" + Capture.Extension).OrderByDescending(f => f.LastWriteTimeUtc).ThenByDescending(f => f.Name, StringComparer.Ordinal)
        : [];

    private static CaptureFile Describe(FileInfo file) => new(file.Name, new DateTimeOffset(file.LastWriteTimeUtc, TimeSpan.Zero), file.Length);

    [GeneratedRegex(@"^[A-Za-z0-9_+-]+\.capture$")]
    private static partial Regex NamePattern();
}
