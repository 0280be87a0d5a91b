using Shared;

namespace Board.Tests.Pages;

/// <summary>The demo car of the documents.</summary>
internal static class Heron
{
    public static string File { get; } = RepositoryRoot.File("docs", "cars", "heron.json");
}
