using Client.Tests.Terminal;
using ScaleLink.Client;
using ScaleLink.Client.Runtime;
using Shared;

namespace Client.Tests.Runtime;

/// <summary>Name and daemon are said once; a file that is missing, damaged or forbidden costs nothing but having to say them again.</summary>
public sealed class MemoryTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-memory-");

    private string File => Path.Combine(_folder.FullName, "scalelink", "terminal.json");

    [Fact]
    public void What_was_said_is_there_again_and_one_does_not_forget_the_other()
    {
        var memory = new Memory(File);
        Assert.Equal(new Remembered(), memory.Read());
        memory.Keep("Ada", null, null);
        memory.Keep(null, "http://127.0.0.1:7000", null);
        Assert.Equal(new Remembered("Ada", "http://127.0.0.1:7000"), new Memory(File).Read());
        memory.Keep("Ben", null, null);
        Assert.Equal(new Remembered("Ben", "http://127.0.0.1:7000"), memory.Read());
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[1, 2]")]
    [InlineData("null")]
    public void A_damaged_file_is_as_good_as_none(string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(File)!);
        System.IO.File.WriteAllText(File, text);
        Assert.Equal(new Remembered(), new Memory(File).Read());
    }

    [Fact]
    public void Where_nothing_can_be_written_nothing_is_kept()
    {
        System.IO.File.WriteAllText(Path.Combine(_folder.FullName, "scalelink"), "a file where the folder would be");
        var memory = new Memory(File);
        memory.Keep("Ada", null, null);
        Assert.Equal(new Remembered(), memory.Read());
    }

    [Fact]
    public async Task A_command_that_did_not_work_leaves_no_trace()
    {
        var memory = new Memory(File);
        var error = new StringWriter();
        var shell = Shells.Redirected(error: error) with { Memory = memory };
        Assert.Equal(2, await CommandLine.Run(["zero", "--who", "Ada", "--daemon", "http://127.0.0.1:1"], shell, TestContext.Current.CancellationToken));
        Assert.Equal(new Remembered(), memory.Read());

        // Whoever gives none is sent where the last one that worked went.
        memory.Keep("Ada", "http://127.0.0.1:1", null);
        Assert.Equal(2, await CommandLine.Run(["zero"], shell, TestContext.Current.CancellationToken));
        Assert.Contains("http://127.0.0.1:1", error.ToString());
    }

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task Units_are_said_once_and_hold_until_others_are_said()
    {
        var memory = new Memory(File);
        var heron = RepositoryRoot.File("docs", "cars", "heron.json");
        async Task<string> Show(params string[] more)
        {
            var output = new StringWriter();
            Assert.Equal(0, await CommandLine.Run(["car", "show", heron, .. more], Shells.Redirected(output) with { Memory = memory }, TestContext.Current.CancellationToken));
            return output.ToString();
        }

        Assert.Contains("LF kg", await Show());
        Assert.Contains("LF lb", await Show("--units", "lb-in"));
        Assert.Equal("lb-in", memory.Read().Units);
        Assert.Contains("LF lb", await Show());
        Assert.Contains("LF kg", await Show("--units", "kg-mm"));
        memory.Keep(null, null, "stone-cubit");
        Assert.Contains("LF kg", await Show());
    }
}
