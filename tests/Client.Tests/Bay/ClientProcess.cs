using System.Diagnostics;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Demo;
using Shared;

namespace Client.Tests.Bay;

/// <summary>The client as a process of its own.</summary>
internal sealed class ClientProcess : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly Process _process;

    public ClientProcess(params string[] arguments)
    {
        var start = Interruptible.Dotnet(Programs.Host);
        (start.RedirectStandardOutput, start.RedirectStandardError) = (true, true);
        foreach (var argument in (string[])[typeof(DaemonConnection).Assembly.Location, .. arguments])
            start.ArgumentList.Add(argument);
        _process = Process.Start(start)!;
    }

    public List<string> Lines { get; } = [];

    public int Id => _process.Id;

    /// <summary>Reads on to the first line that holds the word.</summary>
    public async Task<string> LineWith(string word)
    {
        using var patience = new CancellationTokenSource(Patience);
        while (await _process.StandardOutput.ReadLineAsync(patience.Token) is { } line)
        {
            Lines.Add(line);
            if (line.Contains(word, StringComparison.Ordinal))
                return line;
        }

        throw new InvalidOperationException($"No line with \"{word}\" in:\n{string.Join('\n', Lines)}");
    }

    public void Kill() => _process.Kill();

    public void Interrupt() => Process.Start("kill", ["-INT", $"{Id}"]).WaitForExit();

    /// <summary>Reads the rest; gives the exit code and what it said on standard error.</summary>
    public async Task<(int Code, string Error)> End(TimeSpan patience)
    {
        using var limit = new CancellationTokenSource(patience);
        var error = _process.StandardError.ReadToEndAsync(limit.Token);
        while (await _process.StandardOutput.ReadLineAsync(limit.Token) is { } line)
            Lines.Add(line);
        await _process.WaitForExitAsync(limit.Token);
        return (_process.ExitCode, await error);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
            _process.Kill(entireProcessTree: true);
        _process.Dispose();
    }
}
