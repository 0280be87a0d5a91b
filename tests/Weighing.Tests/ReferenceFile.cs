using System.Text.Json;

namespace Weighing.Tests;

/// <summary>The published values that lie in tests/reference, found from wherever the tests run.</summary>
static class ReferenceFile
{
    public static string Folder { get; } = Find(new DirectoryInfo(AppContext.BaseDirectory));

    public static JsonElement Json(string name)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, name)));
        return document.RootElement.Clone();
    }

    static string Find(DirectoryInfo? folder)
    {
        for (; folder is not null; folder = folder.Parent)
            if (Path.Combine(folder.FullName, "tests", "reference") is var candidate && Directory.Exists(candidate))
                return candidate;
        throw new DirectoryNotFoundException("tests/reference is not above the test program.");
    }
}
