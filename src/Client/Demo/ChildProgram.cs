using System.Diagnostics;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Demo;

/// <summary>
/// A program started beside this one. Its standard input is held open and never written: when this process ends, however it
/// ends, the system closes it, and the child stops.
/// </summary>
internal sealed class ChildProgram : IAsyncDisposable
{
    private const int LinesRemembered = 8;
    private const int LongestLine = 400;
    private static readonly TimeSpan TimeToLeave = TimeSpan.FromSeconds(5);

    private readonly string _name;
    private readonly Process _process;
    private readonly TimeProvider _time;
    private readonly TaskCompletionSource<string> _firstLine = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Queue<string> _complaints = new();

    private ChildProgram(string name, Process process, TimeProvider time)
    {
        (_name, _process, _time) = (name, process, time);
        process.OutputDataReceived += (_, e) => TakeOutput(e.Data);
        process.ErrorDataReceived += (_, e) => TakeComplaint(e.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        Ended = process.WaitForExitAsync();
    }

    /// <summary>Completes when the program has ended, for whatever reason.</summary>
    public Task Ended { get; }

    /// <summary>Its number for the system.</summary>
    public int Id => _process.Id;

    /// <exception cref="ClientException">SL-436: no dotnet host.</exception>
    public static ChildProgram Start(string name, string dll, IEnumerable<string> arguments, TimeProvider time)
    {
        var start = new ProcessStartInfo(Programs.Host, [dll, .. arguments, "--exit-with-stdin"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            CreateNoWindow = true,
        };
        try
        {
            return new ChildProgram(name, Process.Start(start)!, time);
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            throw new ClientException(new Diagnostic(DemoCodes.NoHost, $"{Programs.Host} cannot be run: {e.Message}.", "Put dotnet on the path, or set DOTNET_HOST_PATH."), e);
        }
    }

    /// <summary>The first line on its standard output.</summary>
    public async Task<string> FirstLine(TimeSpan patience, CancellationToken stop)
    {
        var first = await Task.WhenAny(_firstLine.Task, Ended).WaitAsync(patience, _time, stop);
        return first == _firstLine.Task ? await _firstLine.Task : throw new ClientException(Loss());
    }

    /// <summary>What to tell when it ended although nobody asked it to.</summary>
    public Diagnostic Loss()
    {
        string[] words;
        lock (_complaints)
            words = [.. _complaints];
        var last = words.Length > 0 ? $" Its last words: {string.Join(" / ", words.TakeLast(3))}" : "";
        var code = _process.HasExited ? $" with code {_process.ExitCode}" : "";
        return new Diagnostic(DemoCodes.ProgramEnded, $"The {_name} ended{code} before it was asked to.{last}", "Correct what it says, then start again.");
    }

    /// <summary>Asks it to end, waits, and ends it by force when it does not.</summary>
    public async ValueTask DisposeAsync()
    {
        try
        {
            _process.StandardInput.Close();
            await Ended.WaitAsync(TimeToLeave, _time);
        }
        catch (Exception e) when (e is TimeoutException or IOException)
        {
            _process.Kill(entireProcessTree: true);
            await Ended;
        }

        _process.Dispose();
    }

    private void TakeOutput(string? line)
    {
        if (line is not null)
            _firstLine.TrySetResult(line);
    }

    private void TakeComplaint(string? line)
    {
        if (string.IsNullOrWhiteSpace(line))
            return;
        lock (_complaints)
        {
            _complaints.Enqueue(PeerText.Clean(line, LongestLine));
            if (_complaints.Count > LinesRemembered)
                _complaints.Dequeue();
        }
    }
}
