using System.Text;

namespace ScaleLink.Daemon.Configuration;

/// <summary>Reads a file of text no further than it may be large: what stands in its place can be without end.</summary>
internal static class BoundedText
{
    /// <summary>The text (UTF-8); nothing when the file is larger than <paramref name="most"/> bytes.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not read it.</exception>
    public static string? Read(string path, int most)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read);
        var bytes = new byte[most + 1];
        var length = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        if (length > most)
            return null;
        using var reader = new StreamReader(new MemoryStream(bytes, 0, length), Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
