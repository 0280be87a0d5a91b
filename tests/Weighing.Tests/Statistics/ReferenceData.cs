using System.Globalization;
using System.Text.Json;
using Shared;

namespace Weighing.Tests.Statistics;

/// <summary>Reads the published references in tests/reference.</summary>
static class ReferenceData
{
    public static JsonElement Json(string file) => JsonDocument.Parse(File.ReadAllText(PathOf(file))).RootElement;

    /// <summary>Rows of a csv by column name; lines that start with # are its source.</summary>
    public static List<Dictionary<string, string>> Rows(string file)
    {
        var lines = File.ReadLines(PathOf(file)).Where(line => !line.StartsWith('#')).ToList();
        var names = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => names.Zip(line.Split(',')).ToDictionary(p => p.First, p => p.Second))];
    }

    public static double[] Column(string file, string name) => [.. Rows(file).Select(row => Number(row[name]))];

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    static string PathOf(string file) => RepositoryRoot.File("tests", "reference", file);
}
