using ScaleLink.Measure.Diagnostics;

namespace ScaleLink.Measure;

/// <summary>How large a car file may be. A whole car takes a few kilobytes; what is larger is something else.</summary>
public static class CarFileSize
{
    /// <summary>The largest that is read, bytes: 256 kB.</summary>
    public const int Most = 256 * 1024;

    /// <summary>What is said of a larger one.</summary>
    public static Diagnostic Refusal { get; } = new(CarCodes.FileTooLarge, $"The car file is larger than {Most / 1024} kB.", "See that it is the car file: a whole car takes a few kilobytes.");
}
