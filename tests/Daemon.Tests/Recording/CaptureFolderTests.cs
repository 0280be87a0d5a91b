using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Recording;
using ScaleLink.Protocol.Captures;

namespace Daemon.Tests.Recording;

public sealed class CaptureFolderTests : IDisposable
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
        Assert.Equal(["4", "3", "2"], folder.List().Select(f => Capture.Parse(folder.Read(f.Name)!).Header.Reason));
    }

    [Fact]
    public void Two_of_one_second_do_not_overwrite_each_other()
    {
        var folder = Folder();
        Assert.Equal("20260501T140307Z-LF+RF-request.capture", folder.Save(With("a"), "LF+RF", "request", Now).Name);
        Assert.Equal("20260501T140307Z-LF+RF-request-2.capture", folder.Save(With("b"), "LF+RF", "request", Now).Name);
        Assert.Equal(2, folder.List().Count);
    }

    [Theory]
    [InlineData("../secret.capture")]
    [InlineData("/etc/passwd")]
    [InlineData("none.capture")]
    [InlineData("")]
    public void Only_captures_of_the_folder_are_read(string name)
    {
        File.WriteAllText(Path.Combine(_folder.FullName, "secret.capture"), "secret");
        Assert.Null(Folder().Read(name));
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_told()
    {
        File.WriteAllText(Path.Combine(_folder.FullName, "captures"), "a file is in the way");
        Assert.ThrowsAny<IOException>(() => Folder().Save(With("a"), "LF", "request", Now));
    }

    private CaptureFolder Folder(int files = 20) => new(new RecorderConfiguration(TimeSpan.FromSeconds(60), Path.Combine(_folder.FullName, "captures"), files));

    private static Capture With(string reason) => new(new CaptureHeader { Reason = reason }, [new CaptureEvent(1, CaptureEventKind.Received, new byte[] { 1 })]);
}
