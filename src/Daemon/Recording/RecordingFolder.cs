using System.Globalization;
using System.Text.RegularExpressions;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;
using LinkRecording = ScaleLink.Protocol.Recordings.LinkRecording;

namespace ScaleLink.Daemon.Recording;

/// <summary>A link recording on the disk.</summary>
internal sealed record RecordingFile(string Name, DateTimeOffset WrittenAt, long Bytes);

/// <summary>The folder of link recordings. It keeps so many; the oldest go first. Thread-safe.</summary>
internal sealed partial class RecordingFolder(RecorderConfiguration recorder)
{
    private const string TimeFormat = "yyyyMMdd'T'HHmmss'Z'";

    private readonly Lock _gate = new();

    /// <summary>Where it is.</summary>
    public string Path => recorder.Folder;

    /// <summary>Writes a link recording whole or not at all, then lets go of the oldest.</summary>
    /// <exception cref="IOException">The disk is full, or the folder cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    public RecordingFile Save(LinkRecording recording, string link, string reason, DateTimeOffset now)
    {
        lock (_gate)
        {
            PrivateFiles.MakeFolder(Path);
            var name = FreeName($"{now.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture)}-{link}-{reason}");
            var (path, unfinished) = (System.IO.Path.Combine(Path, name), System.IO.Path.Combine(Path, name + ".part"));
            // Whatever lies there is not written through.
            File.Delete(unfinished);
            using (var file = new StreamWriter(PrivateFiles.Open(unfinished, FileMode.CreateNew)))
                file.Write(recording.ToText());
            File.Move(unfinished, path);
            foreach (var old in Files().Skip(recorder.Files))
                old.Delete();
            return Describe(new FileInfo(path));
        }
    }

    /// <summary>The link recordings, newest first.</summary>
    public IReadOnlyList<RecordingFile> List()
    {
        lock (_gate)
            return [.. Files().Select(Describe)];
    }

    /// <summary>The text of one that lies in the folder itself; nothing when there is none of that name.</summary>
    public string? Read(string name)
    {
        // The name comes from outside: it may not lead anywhere else.
        if (!NamePattern().IsMatch(name))
            return null;
        lock (_gate)
        {
            return Files().FirstOrDefault(f => f.Name == name) is { } file ? File.ReadAllText(file.FullName) : null;
        }
    }

    private string FreeName(string stem)
    {
        var name = stem + LinkRecording.Extension;
        for (var copy = 2; File.Exists(System.IO.Path.Combine(Path, name)); copy++)
            name = $"{stem}-{copy}{LinkRecording.Extension}";
        return name;
    }

    private IEnumerable<FileInfo> Files() => Directory.Exists(Path)
        ? new DirectoryInfo(Path).EnumerateFiles().Where(IsRecording).OrderByDescending(f => f.LastWriteTimeUtc).ThenByDescending(f => f.Name, StringComparer.Ordinal)
        : [];

    // A symbolic link leads elsewhere, to what this daemon may read and who asks may not.
    private static bool IsRecording(FileInfo file) => file is { Extension: LinkRecording.Extension or LinkRecording.EarlierExtension, LinkTarget: null };

    private static RecordingFile Describe(FileInfo file) => new(file.Name, new DateTimeOffset(file.LastWriteTimeUtc, TimeSpan.Zero), file.Length);

    [GeneratedRegex(@"^[A-Za-z0-9_+-]+\.(recording|capture)$")]
    private static partial Regex NamePattern();
}
