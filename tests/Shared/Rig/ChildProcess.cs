using System.Collections.Concurrent;
using System.Diagnostics;

namespace Shared.Rig;

/// <summary>A program of the bay as a process of its own. It ends with its standard input, so it never outlives the tests.</summary>
internal sealed class ChildProcess : IDisposable
{
    private static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(10);
    private readonly ConcurrentQueue<string> _said = new();
    private readonly BlockingCollection<string> _output = [];
    private readonly Process _process;
    private bool _isDisposed;
    private bool _isSuspended;

    public ChildProcess(string project, string assembly, params string[] arguments)
        : this([], project, assembly, arguments)
    {
    }

    /// <param name="through">A program and its arguments that starts the one that comes after them in its own place; none: it is started as it is.</param>
    /// <param name="project">Whose program it is.</param>
    /// <param name="assembly">The program.</param>
    /// <param name="arguments">Its arguments.</param>
    public ChildProcess(IReadOnlyList<string> through, string project, string assembly, params string[] arguments)
    {
        IReadOnlyList<string> command = [.. through, "dotnet"];
        var start = new ProcessStartInfo(command[0])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        // Whoever lives for seconds gains nothing by being profiled first, nor by a second compilation of what ran thirty times.
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_TC_CallCountThreshold"] = "1000";
        foreach (var word in command.Skip(1))
            start.ArgumentList.Add(word);
        start.ArgumentList.Add(RepositoryRoot.File("artifacts", "bin", project, Configuration, assembly));
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        _process = Process.Start(start) ?? throw new InvalidOperationException($"{assembly} did not start.");
        _process.OutputDataReceived += (_, e) => Hear(e.Data, _output);
        _process.ErrorDataReceived += (_, e) => Hear(e.Data, null);
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    // The tests run from artifacts/bin/<project>/<configuration>.
    private static string Configuration { get; } = Path.GetFileName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory));

    public int Id => _process.Id;

    public bool HasExited => _process.HasExited;

    public int ExitCode => _process.ExitCode;

    /// <summary>All it has said so far, for messages.</summary>
    public string Said => string.Join('\n', _said);

    public string FirstLine(TimeSpan within) =>
        _output.TryTake(out var line, within) ? line : throw new TimeoutException($"It said nothing on standard output. {Said}");

    /// <summary>The next line of standard output; nothing when none comes in time.</summary>
    public string? NextLine(TimeSpan within) => _output.TryTake(out var line, within) ? line : null;

    /// <summary>A line for its standard input.</summary>
    public void Tell(string line)
    {
        _process.StandardInput.WriteLine(line);
        _process.StandardInput.Flush();
    }

    /// <summary>Whether it has ended in time; all that it said has been heard by then.</summary>
    public bool WaitForExit(TimeSpan within)
    {
        if (!_process.WaitForExit(within))
            return false;
        _process.WaitForExit();
        return true;
    }

    public void Kill() => _process.Kill();

    /// <summary>Takes the processor from it (SIGSTOP).</summary>
    public void Suspend() => Signal("-STOP");

    /// <summary>Lets it go on.</summary>
    public void Resume() => Signal("-CONT");

    public void Dispose()
    {
        // A restart that failed leaves it disposed already.
        if (_isDisposed)
            return;
        _isDisposed = true;
        if (!_process.HasExited)
        {
            // A test that failed may have left it without.
            if (_isSuspended)
                Resume();
            _process.StandardInput.Close();
            if (!_process.WaitForExit(StopWithin))
                _process.Kill();
        }

        _process.Dispose();
        _output.Dispose();
    }

    private void Signal(string signal)
    {
        _isSuspended = signal == "-STOP";
        Signals.Send(_process.Id, signal);
    }

    private void Hear(string? line, BlockingCollection<string>? also)
    {
        if (line is null)
            return;
        _said.Enqueue(line);
        also?.TryAdd(line);
    }
}
