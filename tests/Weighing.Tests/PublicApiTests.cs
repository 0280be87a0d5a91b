using PublicApiGenerator;
using ScaleLink.Weighing.Balance;
using Shared;

namespace Weighing.Tests;

public class PublicApiTests
{
    [Fact]
    public void The_public_api_is_the_approved_one() => Approved.Matches(
        typeof(LoadSummary).Assembly.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false }),
        "tests", "Weighing.Tests", "PublicApi.approved.txt");
}
