namespace House.Tests;

/// <summary>
/// Inside a project, too, a folder uses only those below it. The pairs that still use each other are listed here and may only become fewer: one that is
/// new fails, and one that has gone fails until it is struck from the list.
/// </summary>
public class FolderArrowTests
{
    private static readonly (string Folder, string File) Daemon = ("ScaleLink.Daemon", "scalelinkd.dll");

    [Fact]
    public void Folders_of_the_board() => Check(new("ScaleLink.Board", Daemon, "ScaleLink.Board.dll"), "Drawing <-> Readings");

    [Fact]
    public void Folders_of_the_client() => Check(new("ScaleLink.Client", ("ScaleLink.Client", "scalelink.dll"), "scalelink.dll"),
        "Commands <-> Demo; Commands <-> Json; Commands <-> Proving; Commands <-> Terminal; Json <-> Proving");

    [Fact]
    public void Folders_of_the_daemon() => Check(new("ScaleLink.Daemon", Daemon, Daemon.File),
        "Configuration <-> Links");

    [Fact]
    public void Folders_of_the_protocol_library() => Check(new("ScaleLink.Protocol", Daemon, "ScaleLink.Protocol.dll"), "");

    [Fact]
    public void Folders_of_the_weighing_library() => Check(new("ScaleLink.Weighing", Daemon, "ScaleLink.Weighing.dll"), "Cars <-> Documents");

    [Fact]
    public void Folders_of_the_simulator() => Check(new("CarOnPads", ("CarOnPads", "car-on-pads.dll"), "car-on-pads.dll"), "");

    private static void Check(FolderArrows arrows, string stillBothWays)
    {
        Assert.NotEmpty(arrows.All);
        Assert.Equal(stillBothWays, string.Join("; ", arrows.BothWays));
    }
}
