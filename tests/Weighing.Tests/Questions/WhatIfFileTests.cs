using System.Text.RegularExpressions;
using ScaleLink.Weighing.Questions;
using ScaleLink.Weighing.Statics;
using Shared;

namespace Weighing.Tests.Questions;

/// <summary>What-if files. The example is read out of the document that explains it.</summary>
public partial class WhatIfFileTests
{
    static readonly string Example = JsonBlock().Match(File.ReadAllText(RepositoryRoot.File("docs", "whatif.md"))).Groups[1].Value;

    [Fact]
    public void The_documents_example_asks_everything_and_is_answered()
    {
        var read = WhatIfFile.Read(Example, Beside);
        Assert.Empty(read.Mistakes);
        var (asked, answers) = (read.Questions!, WhatIfAnswers.Of(read.Questions!));
        // Two perches down by half a turn on one diagonal: the statics asked directly.
        var statics = new CarStatics(asked.Car, asked.Loads.Loads.Sum);
        var turned = asked.Loads.Loads + statics.FromTurns(new(0, -0.5, -0.5, 0)) + statics.FromMass(-4, new(1700, -350, 400));
        Assert.Equal(turned.RF, answers.Then!.Value.Loads.Loads.RF, 9);
        Assert.True(answers.Then.Value.Loads.CrossWeightPercent.Estimate < answers.Now.CrossWeightPercent.Estimate);
        Assert.True(answers.Plan!.Reaches);
        Assert.NotEmpty(answers.ForFrontWeight);
        Assert.Equal("dry tank", answers.Class!.Lightest);
        Assert.InRange(answers.CgHeight!.HeightMm.Estimate, 350, 500);
        Assert.Equal(4, answers.Trades.Count);
    }

    [Fact]
    public void Mistakes_of_the_file_and_of_its_car_are_listed_together()
    {
        var text = Example.Replace("\"RR\": 235.0, \"u\": 0.3", "\"RR\": 235.0").Replace("\"plan\"", "\"plam\"");
        var read = WhatIfFile.Read(text, _ => "{ \"name\": \"X\" }");
        Assert.Null(read.Questions);
        Assert.Contains(read.Mistakes, m => m is { Code.Text: "SL-514", Where: "loads_kg.u" });
        Assert.Contains(read.Mistakes, m => m is { Code.Text: "SL-513", Where: "plam" });
        Assert.Contains(read.Mistakes, m => m.Where == "car" && m.Message.ToString().Contains("wheelbase_mm"));
    }

    [Fact]
    public void A_car_that_is_not_there_is_said_to_be_missing() =>
        Assert.Contains(WhatIfFile.Read(Example, _ => null).Mistakes, m => m is { Code.Text: "SL-514", Where: "car" });

    [Fact]
    public void The_car_may_stand_in_the_file_itself()
    {
        var text = Example.Replace("\"cars/heron.json\"", Beside("cars/heron.json")!);
        Assert.Empty(WhatIfFile.Read(text, _ => null).Mistakes);
        var broken = WhatIfFile.Read(text.Replace("\"value\": 1480", "\"value\": 58.3"), _ => null).Mistakes;
        Assert.Equal("car.rear.track_mm", Assert.Single(broken).Where);
    }

    static string? Beside(string name) => File.ReadAllText(RepositoryRoot.File("docs", name));

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex JsonBlock();
}
