using System.Diagnostics;
using CarOnPads.Ports;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Ports;

/// <summary>Who has a port: another program by what it has open, another daemon by its lock.</summary>
public sealed class PortHolderTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-port-");

    [Fact]
    public void A_program_that_has_the_port_open_is_named_until_it_ends()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "What a program has open is seen on Linux.");
        using var terminal = new PseudoTerminal();
        Assert.Null(PortHolder.Of(terminal.SlavePath));
        using var other = Process.Start(new ProcessStartInfo("sh", ["-c", "exec 3<>\"$0\" && echo open && read line", terminal.SlavePath]) { RedirectStandardOutput = true, RedirectStandardInput = true })!;
        Assert.Equal("open", other.StandardOutput.ReadLine());
        // By another name, too.
        var link = Path.Combine(_folder.FullName, "LF");
        File.CreateSymbolicLink(link, terminal.SlavePath);
        Assert.Equal($"process {other.Id} (sh)", PortHolder.Of(terminal.SlavePath));
        Assert.Equal($"process {other.Id} (sh)", PortHolder.Of(link));
        other.StandardInput.Close();
        other.WaitForExit();
        Assert.Null(PortHolder.Of(terminal.SlavePath));
    }

    [Fact]
    public void A_second_daemon_is_refused_a_port_under_any_name_and_told_whose_it_is_until_it_is_given_back()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need a right there.");
        var (port, link) = (Path.Combine(_folder.FullName, "tty"), Path.Combine(_folder.FullName, "by-id"));
        File.WriteAllText(port, "");
        File.CreateSymbolicLink(link, port);
        var (first, second) = (Locks("unit6"), Locks("unit7"));
        using (Assert.IsType<HolderLock>(first.Take(port)))
        {
            var fault = Assert.Throws<LinkEndedException>(() => second.Take(link)).Diagnostic;
            Assert.Equal("SL-108", fault.Code);
            Assert.Contains($"process {Environment.ProcessId} on {Environment.MachineName}, bay unit6, since ", fault.Message);
        }

        second.Take(link)!.Dispose();
    }

    [Fact]
    public void Without_a_folder_for_locks_a_port_is_read_all_the_same() =>
        Assert.Null(new PortLocks("unit6", TimeProvider.System, Path.Combine(_folder.FullName, "gone")).Take("/dev/ttyS0"));

    public void Dispose() => _folder.Delete(recursive: true);

    private PortLocks Locks(string bay) => new(bay, TimeProvider.System, _folder.FullName);
}
