using System.Globalization;
using System.Text.Json;

namespace Weighing.Tests.Settling.Noise;

/// <summary>Published data sets that lie in tests/reference, found from the test's own folder upward.</summary>
static class ReferenceData
{
    public static JsonElement Json(string name) => JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder(), name))).RootElement;

    /// <summary>Rows of numbers; comments and the heading left out.</summary>
    public static double[][] Rows(string name) =>
        [.. File.ReadLines(Path.Combine(Folder(), name)).Where(line => !line.StartsWith('#')).Skip(1)
            .Select(line => line.Split(',').Select(cell => cell == "inf" ? double.PositiveInfinity : double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())];

    public static double[] Numbers(this JsonElement array) => [.. array.EnumerateArray().Select(item => item.GetDouble())];

    static string Folder()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var folder = Path.Combine(at.FullName, "tests", "reference");
            if (Directory.Exists(folder)) return folder;
        }
        throw new DirectoryNotFoundException("tests/reference was not found above the tests.");
    }
}
