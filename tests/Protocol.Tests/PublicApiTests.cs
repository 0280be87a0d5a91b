using PublicApiGenerator;
using ScaleLink.Protocol.PadFrames;
using Shared;

namespace ScaleLink.Protocol.Tests;

public class PublicApiTests
{
    [Fact]
    public void The_public_api_is_the_approved_one() => Approved.Matches(
        typeof(PadFrame).Assembly.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false }),
        "tests", "Protocol.Tests", "PublicApi.approved.txt");
}
