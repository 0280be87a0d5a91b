using PublicApiGenerator;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests;

public class PublicApiTests
{
    const string Approve = "SCALELINK_APPROVE_API";

    static readonly string ApprovedPath = Repository.PathTo("tests", "Protocol.Tests", "PublicApi.approved.txt");

    [Fact]
    public void The_public_api_is_the_approved_one()
    {
        var api = typeof(PadFrame).Assembly.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false })
            .ReplaceLineEndings("\n").TrimEnd() + "\n";
        if (Environment.GetEnvironmentVariable(Approve) == "1")
            File.WriteAllText(ApprovedPath, api);

        var advice = $"If the change is meant, run the test once with {Approve}=1 and commit {ApprovedPath}.";
        Assert.True(File.Exists(ApprovedPath), $"There is no approved API. {advice}");
        var approved = File.ReadAllText(ApprovedPath).ReplaceLineEndings("\n");
        if (api != approved)
            Assert.Fail($"The public API differs from the approved one. {advice}\n{FirstDifference(approved, api)}");
    }

    static string FirstDifference(string approved, string api)
    {
        var (before, now) = (approved.Split('\n'), api.Split('\n'));
        var line = Enumerable.Range(0, Math.Max(before.Length, now.Length))
            .First(index => before.ElementAtOrDefault(index) != now.ElementAtOrDefault(index));
        return $"Line {line + 1}\n  approved: {before.ElementAtOrDefault(line)}\n  now:      {now.ElementAtOrDefault(line)}";
    }
}
