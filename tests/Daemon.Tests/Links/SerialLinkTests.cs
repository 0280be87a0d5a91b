using CarOnPads.Ports;
using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Links.Terminals;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace Daemon.Tests.Links;

/// <summary>
/// What a serial link must do, whoever reads the port: the traps of the serial library on Linux were each found by measurement on pseudo-terminals.
/// </summary>
public abstract class SerialLinkTests : IDisposable
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(30);
    private readonly PseudoTerminal _terminal = OpenTerminal();

    protected string SlavePath => _terminal.SlavePath;

    public void Dispose()
    {
        _terminal.Dispose();
        GC.SuppressFinalize(this);
    }

    private protected abstract ILink OpenLink(SerialAddress address);

    [Fact]
    public async Task A_hang_up_ends_the_pending_read_with_a_fault()
    {
        using var link = Open();
        var read = PendingRead(link);
        await Task.Delay(200);
        Assert.False(read.IsCompleted);
        _terminal.Dispose();
        Assert.Equal("SL-105", await read.WaitAsync(Soon));
    }

    [Fact]
    public async Task A_link_can_be_ended_while_a_read_is_pending()
    {
        var link = Open();
        var read = PendingRead(link);
        await Task.Delay(200);
        Assert.False(read.IsCompleted);
        await Task.Run(link.Dispose).WaitAsync(Soon);
        Assert.Equal("SL-105", await read.WaitAsync(Soon));
    }

    [Fact]
    public async Task A_link_can_be_ended_while_a_write_is_pending()
    {
        var link = Open();
        // Nobody reads the other end: the kernel's buffer fills and the write stays pending until its time is up.
        var write = Task.Run(() => Assert.Throws<LinkEndedException>(() => link.Write(new byte[1 << 20])));
        await Task.Delay(100);
        Assert.False(write.IsCompleted);
        await Task.Run(link.Dispose).WaitAsync(Soon);
        await write.WaitAsync(Soon);
    }

    [Fact]
    public void Bytes_come_through_in_few_reads()
    {
        using var link = Open();
        var sent = new byte[3000];
        new Random(1).NextBytes(sent);
        for (var done = 0; done < sent.Length;)
            done += _terminal.Write(sent.AsSpan(done));
        var received = new List<byte>();
        var buffer = new byte[65536];
        var reads = 0;
        while (received.Count < sent.Length)
        {
            received.AddRange(buffer[..link.Read(buffer, 0, buffer.Length)]);
            reads++;
        }

        Assert.Equal(sent, received);
        Assert.InRange(reads, 1, 20);
    }

    [Fact]
    public void Bytes_from_before_the_opening_are_not_read()
    {
        using (Open())
            _terminal.Write("old"u8);
        Thread.Sleep(100);
        using var link = Open();
        _terminal.Write("new"u8);
        var buffer = new byte[16];
        Assert.Equal("new"u8.ToArray(), buffer[..link.Read(buffer, 0, buffer.Length)]);
    }

    [Theory]
    [InlineData(System.IO.Ports.Parity.Even)]
    [InlineData(System.IO.Ports.Parity.Odd)]
    public void A_parity_bit_can_be_asked_for(System.IO.Ports.Parity parity)
    {
        using var link = OpenLink(new SerialAddress(_terminal.SlavePath, 19200, parity));
        _terminal.Write([0x00, 0x7F, 0x80, 0xFF]);
        var buffer = new byte[16];
        var read = 0;
        while (read < 4)
            read += link.Read(buffer, read, buffer.Length - read);
        Assert.Equal([0x00, 0x7F, 0x80, 0xFF], buffer[..4]);
    }

    [Theory]
    [InlineData("/dev/no-such-port", "SL-101")]
    [InlineData("/tmp", "SL-104")]
    [InlineData("/dev/null", "SL-104")]
    public void Each_failure_to_open_has_its_own_cause(string port, string code) =>
        Assert.Equal(code, Assert.Throws<LinkEndedException>(() => OpenLink(new SerialAddress(port, 115200))).Diagnostic.Code);

    private static Task<string> PendingRead(ILink link) =>
        Task.Run(() => Assert.Throws<LinkEndedException>(() => link.Read(new byte[64], 0, 64)).Diagnostic.Code.Text);

    private ILink Open() => OpenLink(new SerialAddress(_terminal.SlavePath, 115200));

    [Fact]
    public async Task What_is_written_comes_out_and_an_ended_link_takes_nothing_more()
    {
        var link = Open();
        link.Write("hello"u8);
        var buffer = new byte[16];
        var read = 0;
        while (read < 5)
        {
            read += Math.Max(0, (int)_terminal.Read(buffer.AsSpan(read)));
            await Task.Delay(1, TestContext.Current.CancellationToken);
        }

        Assert.Equal("hello"u8.ToArray(), buffer[..5]);
        link.Dispose();
        link.Dispose();
        Assert.Throws<LinkEndedException>(() => link.Write("more"u8));
        Assert.Throws<LinkEndedException>(() => link.Read(buffer, 0, 1));
    }

    private static PseudoTerminal OpenTerminal()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Pseudo-terminals need Linux or macOS.");
        return new PseudoTerminal();
    }
}

/// <summary>Read by the calls of Linux themselves.</summary>
public sealed class TerminalLinkTests : SerialLinkTests
{
    [Fact]
    public void A_driver_that_leaves_parity_out_is_named_and_the_port_is_read_all_the_same()
    {
        using var asked = OpenLink(new SerialAddress(SlavePath, 19200, System.IO.Ports.Parity.Even));
        Assert.Equal("SL-113", asked.Reservation!.Code);
        asked.Dispose();
        using var again = OpenLink(new SerialAddress(SlavePath, 19200, System.IO.Ports.Parity.Even) { DataBits = 7 });
        Assert.Equal("SL-113", again.Reservation!.Code);
    }

    [Fact]
    public void Any_rate_can_be_asked_for()
    {
        using var link = OpenLink(new SerialAddress(SlavePath, 250_000) { StopBits = 2 });
        Assert.Null(link.Reservation);
    }

    [Fact]
    public void A_port_that_is_held_stays_with_its_holder()
    {
        using var first = OpenLink(new SerialAddress(SlavePath, 115200));
        // The superuser may open what is held; that is what the daemon's own locks are for.
        if (Environment.IsPrivilegedProcess)
            return;
        Assert.Equal("SL-103", Assert.Throws<LinkEndedException>(() => OpenLink(new SerialAddress(SlavePath, 115200))).Diagnostic.Code);
    }

    private protected override ILink OpenLink(SerialAddress address)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "The calls are those of Linux.");
        return TerminalLink.Open(address);
    }
}

/// <summary>Read by the serial library.</summary>
public sealed class LibraryLinkTests : SerialLinkTests
{
    private protected override ILink OpenLink(SerialAddress address) => SerialLink.Open(address);
}
