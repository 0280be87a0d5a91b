using System.Text.Json;
using Shared;

namespace Weighing.Tests;

/// <summary>The published values that lie in tests/reference, found from wherever the tests run.</summary>
static class ReferenceFile
{
    public static JsonElement Json(string name)
    {
        using var document = JsonDocument.Parse(RepositoryRoot.Read("tests", "reference", name));
        return document.RootElement.Clone();
    }
}
