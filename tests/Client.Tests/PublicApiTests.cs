using PublicApiGenerator;
using ScaleLink.Client.Connection;
using Shared;

namespace Client.Tests;

public class PublicApiTests
{
    [Fact]
    public void The_public_api_is_the_approved_one() => Approved.Matches(
        typeof(DaemonConnection).Assembly.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false }),
        "tests", "Client.Tests", "PublicApi.approved.txt");
}
