using System.Globalization;
using System.Text.Json;
using Shared;

namespace Weighing.Tests.Settling.Noise;

/// <summary>Published data sets that lie in tests/reference, found from the test's own folder upward.</summary>
static class ReferenceData
{
    public static JsonElement Json(string name) => JsonDocument.Parse(File.ReadAllText(RepositoryRoot.File("tests", "reference", name))).RootElement;

    /// <summary>Rows of numbers; comments and the heading left out.</summary>
    public static double[][] Rows(string name) =>
        [.. File.ReadLines(RepositoryRoot.File("tests", "reference", name)).Where(line => !line.StartsWith('#')).Skip(1)
            .Select(line => line.Split(',').Select(cell => cell == "inf" ? double.PositiveInfinity : double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())];

    public static double[] Numbers(this JsonElement array) => [.. array.EnumerateArray().Select(item => item.GetDouble())];
}
