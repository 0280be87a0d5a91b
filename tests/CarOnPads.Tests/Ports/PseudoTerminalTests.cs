using System.Runtime.Versioning;
using CarOnPads.Ports;

namespace CarOnPads.Tests.Ports;

[UnsupportedOSPlatform("windows")]
public class PseudoTerminalTests
{
    static readonly byte[] s_every = [.. Enumerable.Range(0, 256).Select(i => (byte)i)];

    public PseudoTerminalTests() => Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no pseudo-terminals of this kind.");

    [Fact]
    public void Every_byte_passes_both_ways_unchanged_and_without_echo()
    {
        using var terminal = new PseudoTerminal();
        using var reader = new SlaveReader(terminal.SlavePath);
        Assert.Equal(256, terminal.Write(s_every));
        Assert.Equal(s_every, reader.Read(256));

        reader.Write(s_every);
        var back = new byte[300];
        Assert.Equal(256, terminal.Read(back));
        Assert.Equal(s_every, back[..256]);
        Assert.True(reader.Empty);
        Assert.Equal(0, terminal.Read(back));
    }

    [Fact]
    public void Bytes_are_thrown_away_and_counted_while_nobody_has_the_slave_open()
    {
        using var terminal = new PseudoTerminal();
        Assert.False(terminal.HasReader);
        Assert.Equal(0, terminal.Write([1, 2, 3]));
        Assert.Equal(3, terminal.LostBytes);
        using (var reader = new SlaveReader(terminal.SlavePath))
        {
            Assert.True(terminal.HasReader);
            Assert.Equal(1, terminal.Write([4]));
            Assert.Equal([4], reader.Read(1));
        }

        Assert.False(terminal.HasReader);
        Assert.Equal(0, terminal.Write([5, 6]));
        using var next = new SlaveReader(terminal.SlavePath);
        terminal.Write(s_every);
        Assert.Equal(s_every, next.Read(256));
    }

    [Fact]
    public void A_reader_that_does_not_read_never_blocks_the_writer()
    {
        using var terminal = new PseudoTerminal();
        using var reader = new SlaveReader(terminal.SlavePath);
        var taken = 0L;
        for (var i = 0; i < 1000; i++)
            taken += terminal.Write(new byte[1024]);
        Assert.InRange(taken, 1, 200_000);
        Assert.Equal(1024 * 1000, taken + terminal.LostBytes);
    }

    [Fact]
    public void A_reader_sees_the_hang_up()
    {
        var terminal = new PseudoTerminal();
        using var reader = new SlaveReader(terminal.SlavePath);
        terminal.Dispose();
        Assert.True(reader.HungUp);
        Assert.False(terminal.HasReader);
        Assert.Equal(0, terminal.Write([1]));
        Assert.Equal(0, terminal.Read(new byte[1]));
        terminal.Dispose();
    }

    [Fact]
    public async Task Terminals_opened_at_the_same_time_are_different_ones()
    {
        var terminals = await Task.WhenAll(Enumerable.Range(0, 16).Select(_ => Task.Run(() => new PseudoTerminal())));
        Assert.Equal(16, terminals.Select(t => t.SlavePath).Distinct().Count());
        foreach (var terminal in terminals)
            terminal.Dispose();
    }
}
