using System.Diagnostics;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using Shared;

namespace CarOnPads.Tests.Hosting;

/// <summary>The built program in a process of its own.</summary>
public sealed class ProgramTests : IDisposable
{
    readonly string _directory = Path.Combine(Path.GetTempPath(), $"pads-{Guid.NewGuid():N}");

    public void Dispose()
    {
        if (Directory.Exists(_directory))
            Directory.Delete(_directory, recursive: true);
    }

    [Fact]
    public async Task It_tells_where_everything_is_answers_and_ends_with_its_parent()
    {
        using var program = Start("--exit-with-stdin", "--ports", _directory, "--seed", "5", "--imperfections", "none", "--rate", "100");
        var ready = JsonNode.Parse((await program.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken))!)!;
        Assert.True((bool)ready["ready"]!);
        Assert.Equal(5, (long)ready["seed"]!);
        Assert.Equal("SLP-1002", (string)ready["serials"]!["RF"]!);
        Assert.Equal(0.0005, (double)ready["kg_per_count"]!["LF"]!);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(Path.Combine(_directory, "LR"), (string)ready["ports"]!["LR"]!);

        var truth = await AskAsync((string)ready["control"]!, """{"do":"truth"}""");
        Assert.Equal(1048, (double)truth["total_kg"]!, 0.001);
        program.StandardInput.Close();
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, program.ExitCode);
        Assert.False(Directory.Exists(_directory));
    }

    [Fact]
    public async Task Over_tcp_a_reader_gets_frames_and_quit_ends_it()
    {
        using var program = Start("--tcp", "--start", "raised");
        var ready = JsonNode.Parse((await program.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken))!)!;
        var pad = new Uri((string)ready["ports"]!["RR"]!);
        using var reader = new TcpClient(pad.Host, pad.Port);
        await reader.GetStream().ReadExactlyAsync(new byte[500], TestContext.Current.CancellationToken);
        Assert.True((bool)(await AskAsync((string)ready["control"]!, """{"do":"quit"}"""))["ok"]!);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, program.ExitCode);
    }

    [Theory]
    [InlineData("LF=9600/even", "CP-105 --line: 9600/even does not carry 320 samples a second of LF")]
    [InlineData("BUS=9600/even", "CP-107 --line: there is no port BUS")]
    public async Task A_line_that_cannot_be_is_refused_at_the_start(string line, string complaint)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only Linux tells what a reader has set.");
        using var program = Start("--ports", _directory, "--line", line);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(2, program.ExitCode);
        Assert.Contains(complaint, await program.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TERM")]
    [InlineData("INT")]
    public async Task A_signal_ends_it_cleanly(string signal)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such signals.");
        using var program = Start("--ports", _directory);
        await program.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
        Assert.Equal(4, Directory.GetFiles(_directory).Length);
        using (var kill = Process.Start("kill", ["-s", signal, $"{program.Id}"]))
            await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, program.ExitCode);
        Assert.False(Directory.Exists(_directory));
    }

    [Theory]
    [InlineData("CP-101", "--car", "/nowhere/car.json")]
    [InlineData("CP-104", "--imperfections", "rust")]
    [InlineData("CP-105", "--rate", "5")]
    [InlineData("CP-106", "--scenario", "/nowhere/work.json")]
    public async Task A_wrong_option_is_refused_with_a_code(string code, params string[] options)
    {
        using var program = Start(options);
        var complaint = await program.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await program.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(2, program.ExitCode);
        Assert.Contains(code, complaint);
    }

    static Process Start(params string[] options)
    {
        var start = Interruptible.Dotnet();
        (start.RedirectStandardInput, start.RedirectStandardOutput, start.RedirectStandardError) = (true, true, true);
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "car-on-pads.dll"));
        foreach (var option in options)
            start.ArgumentList.Add(option);
        return Process.Start(start)!;
    }

    static async Task<JsonNode> AskAsync(string control, string command)
    {
        var parts = control.Split(':');
        using var client = new TcpClient(parts[0], int.Parse(parts[1]));
        await using var writer = new StreamWriter(client.GetStream()) { AutoFlush = true };
        using var reader = new StreamReader(client.GetStream());
        await writer.WriteLineAsync(command);
        return JsonNode.Parse((await reader.ReadLineAsync(TestContext.Current.CancellationToken))!)!;
    }
}
