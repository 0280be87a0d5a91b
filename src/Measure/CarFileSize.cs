namespace ScaleLink.Measure;

/// <summary>How large a car file may be. A whole car takes a few kilobytes; what is larger is something else.</summary>
public static class CarFileSize
{
    /// <summary>The largest that is read, bytes: 256 kB.</summary>
    public const int Most = 256 * 1024;
}
