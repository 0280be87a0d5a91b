using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Shared;

namespace House.Tests;

/// <summary>What is public is meant for other programs: the generated API and the client library. Everything else is seen by the friends named in its project file.</summary>
public class SurfaceTests
{
    // The tests are built as what they look at is.
    private static readonly string Configuration = new DirectoryInfo(AppContext.BaseDirectory).Name;

    [Theory]
    [InlineData("ScaleLink.Probing", "ScaleLink.Probing.dll")]
    [InlineData("ScaleLink.Protocol", "ScaleLink.Protocol.dll")]
    [InlineData("ScaleLink.Weighing", "ScaleLink.Weighing.dll")]
    [InlineData("ScaleLink.Daemon", "scalelinkd.dll")]
    [InlineData("CarOnPads", "car-on-pads.dll")]
    public void Shows_nothing_to_strangers(string folder, string assembly) => Assert.Empty(Shown(folder, assembly));

    [Fact]
    public void What_is_meant_for_others_is_found() => Assert.Contains("ScaleLink.Client.Connection.DaemonConnection", Shown("ScaleLink.Client", "scalelink.dll"));

    private static List<string> Shown(string folder, string assembly)
    {
        using var file = new PEReader(File.OpenRead(RepositoryRoot.File("artifacts", "bin", folder, Configuration, assembly)));
        var metadata = file.GetMetadataReader();
        // The web SDK itself makes the Program of a web application public; it stands in no namespace.
        return [.. metadata.TypeDefinitions.Select(metadata.GetTypeDefinition)
            .Where(type => !type.Namespace.IsNil && (type.Attributes & TypeAttributes.VisibilityMask) == TypeAttributes.Public)
            .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}")];
    }
}
