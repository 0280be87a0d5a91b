namespace ScaleLink.Probing.Ports;

/// <summary>Where the system tells of its devices and processes. Other roots than the machine's own serve for trying the checks.</summary>
internal sealed record SystemTree
{
    public string Dev { get; init; } = "/dev";
    public string Sys { get; init; } = "/sys";
    public string Proc { get; init; } = "/proc";
    public string Etc { get; init; } = "/etc";
    public string Run { get; init; } = "/run";

    /// <summary>The first line of a small file; nothing when it cannot be read.</summary>
    public static string? Line(string path)
    {
        try
        {
            return File.ReadLines(path).FirstOrDefault()?.Trim();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>All lines of a file; none when it cannot be read.</summary>
    public static IReadOnlyList<string> Lines(string path)
    {
        try
        {
            return File.ReadAllLines(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>What a name leads to behind every symbolic link; the name itself when it is none. Each part is followed by itself: a link's text counts from where the link really lies.</summary>
    public static string RealPath(string path)
    {
        var real = "/";
        foreach (var part in Path.GetFullPath(path).Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            real = Path.Combine(real, part);
            if (LinkTarget(real) is { } target)
                real = RealPath(Path.GetFullPath(target, Path.GetDirectoryName(real)!));
        }

        return real;
    }

    private static string? LinkTarget(string path)
    {
        try
        {
            return new FileInfo(path).LinkTarget;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
