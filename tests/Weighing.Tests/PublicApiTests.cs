using PublicApiGenerator;
using ScaleLink.Measure;
using Shared;

namespace Weighing.Tests;

public class PublicApiTests
{
    [Fact]
    public void The_public_api_is_the_approved_one() => Approved.Matches(
        typeof(Corners).Assembly.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false }),
        "tests", "Weighing.Tests", "PublicApi.approved.txt");
}
