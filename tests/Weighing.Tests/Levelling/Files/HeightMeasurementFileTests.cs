using System.Text.RegularExpressions;
using ScaleLink.Weighing.Levelling.Files;
using Shared;

namespace Weighing.Tests.Levelling.Files;

/// <summary>Height measurement files. The examples are read out of the document that explains them.</summary>
public partial class HeightMeasurementFileTests
{
    static readonly string[] Examples = [.. JsonBlocks().Matches(File.ReadAllText(RepositoryRoot.File("docs", "patch.md"))).Select(m => m.Groups[1].Value)];

    [Fact]
    public void Heights_of_the_document_are_heights_about_their_mean()
    {
        var heightMeasurement = HeightMeasurementFile.Read(Examples[0]).HeightMeasurement!.Adjust();
        Assert.Equal(0, heightMeasurement.HeightsMm.Sum, 9);
        Assert.Equal(1.5, heightMeasurement.HeightsMm.RF - heightMeasurement.HeightsMm.LF, 9);
        Assert.Equal(0, heightMeasurement.Spare);
    }

    [Fact]
    public void Differences_and_beams_of_the_document_close_on_themselves()
    {
        var heightMeasurement = HeightMeasurementFile.Read(Examples[1]).HeightMeasurement!.Adjust();
        Assert.Equal(1, heightMeasurement.Spare);
        // Half the difference of the two readings is the slope: 0.06 degrees on 1500 mm are 1.57 mm, 0.035 degrees 0.92 mm.
        Assert.InRange(heightMeasurement.HeightsMm.RF - heightMeasurement.HeightsMm.LF, 1.45, 1.7);
        Assert.InRange(heightMeasurement.HeightsMm.RR - heightMeasurement.HeightsMm.LR, 0.8, 1.05);
        Assert.InRange(heightMeasurement.ClosureMm, 0, 0.1);
    }

    [Fact]
    public void Every_mistake_is_listed()
    {
        var mistakes = HeightMeasurementFile.Read(Examples[1].Replace("\"from\": \"RF\"", "\"from\": \"FR\"").Replace("\"span_mm\"", "\"span\"")).Mistakes;
        Assert.Equal(["SL-515", "SL-514", "SL-513", "SL-514", "SL-513"], mistakes.Select(m => m.Code.Text));
        Assert.Equal("SL-514", Assert.Single(HeightMeasurementFile.Read("{}").Mistakes).Code);
    }

    [Fact]
    public void Heights_and_differences_do_not_mix()
    {
        var both = HeightMeasurementFile.Read(Examples[1]).HeightMeasurement! with { HeightsMm = new(0, 0, 0, 0), HeightUncertaintiesMm = new(1, 1, 1, 1) };
        Assert.Equal(PatchCodes.InputUnusable, Assert.Throws<DiagnosticException>(both.Adjust).Diagnostics[0].Code);
    }

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex JsonBlocks();
}
