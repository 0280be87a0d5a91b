namespace House.Tests;

/// <summary>Inside a project, too, the folders form floors: each uses only those below it, no two use each other, and there is no circle.</summary>
public class FolderArrowTests
{
    [Theory]
    [InlineData("ScaleLink.Board", "ScaleLink.Daemon", "scalelinkd.dll", "ScaleLink.Board.dll")]
    [InlineData("ScaleLink.Client", "ScaleLink.Client", "scalelink.dll", "scalelink.dll")]
    [InlineData("ScaleLink.Daemon", "ScaleLink.Daemon", "scalelinkd.dll", "scalelinkd.dll")]
    [InlineData("ScaleLink.Measure", "ScaleLink.Daemon", "scalelinkd.dll", "ScaleLink.Measure.dll")]
    [InlineData("ScaleLink.Probing", "ScaleLink.Client", "scalelink.dll", "ScaleLink.Probing.dll")]
    [InlineData("ScaleLink.Protocol", "ScaleLink.Daemon", "scalelinkd.dll", "ScaleLink.Protocol.dll")]
    [InlineData("ScaleLink.Weighing", "ScaleLink.Daemon", "scalelinkd.dll", "ScaleLink.Weighing.dll")]
    [InlineData("CarOnPads", "CarOnPads", "car-on-pads.dll", "car-on-pads.dll")]
    public void Folders_of_a_project_are_floors(string project, string folder, string program, string assembly)
    {
        var arrows = new FolderArrows(project, (folder, program), assembly);
        Assert.NotEmpty(arrows.All);
        Assert.Empty(arrows.BothWays);
        Assert.Empty(arrows.Circles);
    }

    [Fact]
    public void A_pair_and_a_circle_are_seen()
    {
        var arrows = new FolderArrows("House.Tests.Crooked", ("House.Tests", "House.Tests.dll"), "House.Tests.dll");
        Assert.Equal(["Left <-> Right"], arrows.BothWays);
        Assert.Equal(["Inner.One, Inner.Three, Inner.Two", "Left, Right"], arrows.Circles);
    }
}
