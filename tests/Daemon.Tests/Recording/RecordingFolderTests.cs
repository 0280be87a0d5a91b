using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Recording;
using ScaleLink.Protocol.Recordings;

namespace Daemon.Tests.Recording;

public sealed class RecordingFolderTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 5, 1, 14, 3, 7, TimeSpan.Zero);
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void So_many_are_kept_and_the_oldest_go_first()
    {
        var folder = Folder(files: 3);
        for (var k = 0; k < 5; k++)
            folder.Save(With($"{k}"), "LF", "SL-105", Now.AddSeconds(k));
        Assert.Equal(["4", "3", "2"], folder.List().Select(f => LinkRecording.Parse(folder.Read(f.Name)!).Header.Reason));
    }

    [Fact]
    public void Two_of_one_second_do_not_overwrite_each_other()
    {
        var folder = Folder();
        Assert.Equal("20260501T140307Z-LF+RF-request.recording", folder.Save(With("a"), "LF+RF", "request", Now).Name);
        Assert.Equal("20260501T140307Z-LF+RF-request-2.recording", folder.Save(With("b"), "LF+RF", "request", Now).Name);
        Assert.Equal(2, folder.List().Count);
    }

    [Theory]
    [InlineData("../secret.recording")]
    [InlineData("/etc/passwd")]
    [InlineData("none.recording")]
    [InlineData("")]
    public void Only_link_recordings_of_the_folder_are_read(string name)
    {
        File.WriteAllText(Path.Combine(_folder.FullName, "secret.recording"), "secret");
        Assert.Null(Folder().Read(name));
    }

    [Fact]
    public void A_link_to_somewhere_else_is_neither_read_nor_listed()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Making a symbolic link takes a right of its own on Windows.");
        var folder = Folder();
        var own = folder.Save(With("a"), "LF", "request", Now).Name;
        var secret = Path.Combine(_folder.FullName, "secret");
        File.WriteAllText(secret, "secret");
        File.CreateSymbolicLink(Path.Combine(folder.Path, "link.recording"), secret);
        File.CreateSymbolicLink(Path.Combine(folder.Path, "near.recording"), own);
        Assert.Null(folder.Read("link.recording"));
        Assert.Null(folder.Read("near.recording"));
        Assert.NotNull(folder.Read(own));
        Assert.Equal([own], folder.List().Select(f => f.Name));
    }

    [Fact]
    public void Nobody_but_owner_and_group_reads_them()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such modes.");
        var folder = Folder();
        var name = folder.Save(With("a"), "LF", "request", Now).Name;
        var (others, all) = (UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Assert.Equal(all, File.GetUnixFileMode(Path.Combine(folder.Path, name)) & ~UnixFileMode.GroupRead);
        Assert.Equal((UnixFileMode)0, File.GetUnixFileMode(folder.Path) & (others | UnixFileMode.GroupWrite));
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_told()
    {
        File.WriteAllText(Path.Combine(_folder.FullName, "recordings"), "a file is in the way");
        Assert.ThrowsAny<IOException>(() => Folder().Save(With("a"), "LF", "request", Now));
    }

    private RecordingFolder Folder(int files = 20) => new(new RecorderConfiguration(TimeSpan.FromSeconds(60), Path.Combine(_folder.FullName, "recordings"), files));

    private static LinkRecording With(string reason) => new(new RecordingHeader { Reason = reason }, [new RecordingEvent(1, RecordingEventKind.Received, new byte[] { 1 })]);
}
