using CarOnPads.Runtime;

namespace CarOnPads.Ports;

/// <summary>A symbolic link that changes its target in one instant: a reader finds the old or the new, never nothing.</summary>
sealed class StableName(string link)
{
    string? _target;

    /// <summary>Full path of the link.</summary>
    public string Link { get; } = Path.GetFullPath(link);

    /// <summary>Points the name to a device.</summary>
    /// <exception cref="SimulatorException">CP-301 something that is not a link bears the name.</exception>
    public void PointTo(string target)
    {
        RefuseStranger();
        Directory.CreateDirectory(Path.GetDirectoryName(Link)!);
        var fresh = $"{Link}.{Environment.ProcessId}.new";
        File.Delete(fresh);
        File.CreateSymbolicLink(fresh, target);
        File.Move(fresh, Link, overwrite: true);
        _target = target;
    }

    /// <summary>Takes the name away, unless somebody else has pointed it elsewhere since.</summary>
    public void Remove()
    {
        if (new FileInfo(Link).LinkTarget is { } now && now == _target)
            File.Delete(Link);
    }

    void RefuseStranger()
    {
        var there = new FileInfo(Link);
        if (there.LinkTarget is null && (there.Exists || Directory.Exists(Link)))
            throw new SimulatorException("CP-301", $"{Link} exists and is no symbolic link.", "Choose another --ports directory.");
    }
}
