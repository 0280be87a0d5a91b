using System.Globalization;
using System.Text.Json;

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

    static string PathOf(string file)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (Path.Combine(folder.FullName, "tests", "reference", file) is var path && File.Exists(path))
                return path;
        throw new FileNotFoundException($"tests/reference/{file} is not above {AppContext.BaseDirectory}.");
    }
}
