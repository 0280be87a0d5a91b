using System.Diagnostics;
using Client.Tests.Terminal;
using ScaleLink.Client;
using ScaleLink.Client.Completion;
using ScaleLink.Client.Demo;

namespace Client.Tests.Completion;

/// <summary>The scripts run in the shells themselves and ask the program as it is built. A shell that is not installed is skipped, and said to be.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-completion-");

    [Theory]
    [InlineData("scalelink wa", "watch")]
    [InlineData("scalelink work", "work work-session")]
    [InlineData("scalelink --units ", "kg-mm lb-in")]
    [InlineData("scalelink --units l", "lb-in")]
    [InlineData("scalelink watch --s", "--seconds")]
    [InlineData("scalelink patch on s", "slope")]
    [InlineData("scalelink completion p", "powershell")]
    [InlineData("scalelink nonsense-that-nothing-begins-with", "")]
    public async Task Bash_completes(string line, string expected) => Assert.Equal(expected, await Bash(line));

    [Fact]
    public async Task Zsh_takes_the_script_and_completes()
    {
        Skip("zsh");
        // Outside a terminal zsh has no cursor: what the script would hand on is caught in place of compadd.
        var text = await Run("zsh", $$"""
            compdef() { :; }
            compadd() { shift; for s in "$@"; do [[ $s == ${words[CURRENT]}* ]] && print -r -- "$s"; done; }
            {{CompletionScripts.Of("zsh")}}
            words=(scalelink work); CURRENT=2
            _scalelink
            """, "-f");
        Assert.Equal("work\nwork-session", text);
    }

    [Fact]
    public async Task Fish_takes_the_script_and_completes()
    {
        Skip("fish");
        var text = await Run("fish", $"{CompletionScripts.Of("fish")}\ncomplete -C 'scalelink completion po'; complete -C 'scalelink work'\n", "--no-config");
        Assert.Equal("powershell\nwork\nwork-session", text);
    }

    [Fact]
    public async Task Each_shell_gets_a_script_and_another_is_told_which_there_are()
    {
        foreach (var shell in CompletionScripts.Shells)
        {
            var output = new StringWriter();
            Assert.Equal(0, await CommandLine.Run(["completion", shell], Shells.Redirected(output), TestContext.Current.CancellationToken));
            Assert.Contains("[suggest:", output.ToString());
        }

        var error = new StringWriter();
        Assert.Equal(2, await CommandLine.Run(["completion", "csh"], Shells.Redirected(error: error), TestContext.Current.CancellationToken));
        Assert.Contains("powershell", error.ToString());
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private Task<string> Bash(string line) => Run("bash", $$"""
        source <(scalelink completion bash)
        COMP_LINE="{{line}}"; COMP_POINT=${#COMP_LINE}
        read -ra COMP_WORDS <<< "$COMP_LINE"
        [[ "$COMP_LINE" == *" " ]] && COMP_WORDS+=("")
        COMP_CWORD=$(( ${#COMP_WORDS[@]} - 1 ))
        _scalelink_complete
        echo "${COMPREPLY[*]}"
        """, "--norc");

    private static void Skip(string shell) =>
        Assert.SkipUnless((Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(f => File.Exists(Path.Combine(f, shell))), $"{shell} is not installed here.");

    // The program under its own name, first on the path.
    private async Task<string> Run(string shell, string script, string bare)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Shells of Unix.");
        var program = Path.Combine(_folder.FullName, "scalelink");
        await File.WriteAllTextAsync(program, $"#!/bin/sh\nexec '{Programs.Host}' '{typeof(CommandLine).Assembly.Location}' \"$@\"\n");
        File.SetUnixFileMode(program, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        var path = Path.Combine(_folder.FullName, "script");
        await File.WriteAllTextAsync(path, script);
        var start = new ProcessStartInfo(shell, [bare, path]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["PATH"] = $"{_folder.FullName}:{Environment.GetEnvironmentVariable("PATH")}";
        start.Environment["HOME"] = _folder.FullName;
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var text = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(text.Length > 0 || process.ExitCode == 0, await error);
        return text.Trim();
    }
}
