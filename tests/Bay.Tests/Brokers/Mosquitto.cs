using System.Diagnostics;
using System.Net.Sockets;
using Shared.Rig;

namespace Bay.Tests.Brokers;

/// <summary>The real Mosquitto, when the machine has it. CI must have it.</summary>
internal sealed class Mosquitto : IDisposable
{
    private readonly Process _process;

    public Mosquitto(int port)
    {
        _process = Process.Start(new ProcessStartInfo(InstalledProgram.Path("mosquitto")!, ["-p", $"{port}"]) { RedirectStandardError = true })!;
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        Wait.Until(() => Answers(port), Wait.Patience, "Mosquitto listens");
    }

    /// <summary>Runs mosquitto_sub as anybody would, without a client id, and gives its lines.</summary>
    public static string[] Subscribe(int port, string topic, int count, params string[] more)
    {
        string[] arguments = ["-h", "127.0.0.1", "-p", $"{port}", "-t", topic, "-C", $"{count}", "-W", "10", .. more];
        using var process = Process.Start(new ProcessStartInfo(InstalledProgram.Path("mosquitto_sub")!, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, process.StandardError.ReadToEnd());
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    public void Suspend() => Signal("-STOP");

    public void Resume() => Signal("-CONT");

    public void Dispose()
    {
        Signal("-CONT");
        _process.Kill();
        _process.WaitForExit();
        _process.Dispose();
    }

    private void Signal(string signal) => Signals.Send(_process.Id, signal);

    private static bool Answers(int port)
    {
        try
        {
            using var client = new TcpClient("127.0.0.1", port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
