using System.Text.RegularExpressions;
using ScaleLink.Weighing.Patch.Files;
using Shared;

namespace Weighing.Tests.Patch.Files;

/// <summary>Survey files. The examples are read out of the document that explains them.</summary>
public partial class SurveyFileTests
{
    static readonly string[] Examples = [.. JsonBlocks().Matches(File.ReadAllText(RepositoryRoot.File("docs", "patch.md"))).Select(m => m.Groups[1].Value)];

    [Fact]
    public void Heights_of_the_document_are_heights_about_their_mean()
    {
        var survey = SurveyFile.Read(Examples[0]).Survey!.Adjust();
        Assert.Equal(0, survey.HeightsMm.Sum, 9);
        Assert.Equal(1.5, survey.HeightsMm.RF - survey.HeightsMm.LF, 9);
        Assert.Equal(0, survey.Spare);
    }

    [Fact]
    public void Differences_and_beams_of_the_document_close_on_themselves()
    {
        var survey = SurveyFile.Read(Examples[1]).Survey!.Adjust();
        Assert.Equal(1, survey.Spare);
        // Half the difference of the two readings is the slope: 0.06 degrees on 1500 mm are 1.57 mm, 0.035 degrees 0.92 mm.
        Assert.InRange(survey.HeightsMm.RF - survey.HeightsMm.LF, 1.45, 1.7);
        Assert.InRange(survey.HeightsMm.RR - survey.HeightsMm.LR, 0.8, 1.05);
        Assert.InRange(survey.ClosureMm, 0, 0.1);
    }

    [Fact]
    public void Every_mistake_is_listed()
    {
        var mistakes = SurveyFile.Read(Examples[1].Replace("\"from\": \"RF\"", "\"from\": \"FR\"").Replace("\"span_mm\"", "\"span\"")).Mistakes;
        Assert.Equal(["SL-515", "SL-514", "SL-513", "SL-514", "SL-513"], mistakes.Select(m => m.Code.Text));
        Assert.Equal("SL-514", Assert.Single(SurveyFile.Read("{}").Mistakes).Code);
    }

    [Fact]
    public void Heights_and_differences_do_not_mix()
    {
        var both = SurveyFile.Read(Examples[1]).Survey! with { HeightsMm = new(0, 0, 0, 0), HeightUncertaintiesMm = new(1, 1, 1, 1) };
        Assert.Equal(PatchCodes.InputUnusable, Assert.Throws<DiagnosticException>(both.Adjust).Diagnostics[0].Code);
    }

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex JsonBlocks();
}
