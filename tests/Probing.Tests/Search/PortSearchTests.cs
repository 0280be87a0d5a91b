using System.Runtime.Versioning;
using System.Text;
using CarOnPads.Ports;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Search;

namespace Probing.Tests.Search;

/// <summary>Several ports at once, on real pseudo-terminals.</summary>
[UnsupportedOSPlatform("windows")]
public class PortSearchTests
{
    private static readonly SearchSettings Short = new() { Listening = TimeSpan.FromSeconds(0.5) };

    [Fact]
    public async Task A_port_that_is_not_there_and_a_silent_one_keep_nobody_from_being_found()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var silent = new PseudoTerminal();
        using var speaking = new SpeakingTerminal(Encoding.ASCII.GetBytes(" 12.5 kg\r\n"));
        var told = new List<SearchProgress>();
        var findings = await Search(Short).Search([silent.SlavePath, "/dev/no-such-port", speaking.Path, silent.SlavePath], new Told(told), TestContext.Current.CancellationToken)
            .ToDictionaryAsync(f => f.Port, cancellationToken: TestContext.Current.CancellationToken);

        Assert.Equal(3, findings.Count);
        Assert.Equal("SL-471", findings["/dev/no-such-port"].Trouble?.Code.Text);
        Assert.False(findings[silent.SlavePath].IsKnown);
        Assert.IsType<FoundText>(Assert.Single(findings[speaking.Path].Found));
        Assert.Contains(told, p => p.Port == silent.SlavePath && p.Doing == "listens");
    }

    [Fact]
    public async Task A_port_that_goes_away_meanwhile_is_told_of_and_the_others_go_on()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        var pulled = new PseudoTerminal();
        using var speaking = new SpeakingTerminal(Encoding.ASCII.GetBytes(" 12.5 kg\r\n"));
        var search = Search(Short with { Listening = TimeSpan.FromSeconds(5) }).Search([pulled.SlavePath, speaking.Path], null, TestContext.Current.CancellationToken).ToListAsync(TestContext.Current.CancellationToken).AsTask();
        SpinWait.SpinUntil(() => pulled.HasReader, TimeSpan.FromSeconds(30));
        pulled.Dispose();
        var findings = await search;
        Assert.Equal("SL-475", findings.Single(f => f.Port == pulled.SlavePath).Trouble?.Code.Text);
        Assert.True(findings.Single(f => f.Port == speaking.Path).IsKnown);
    }

    [Fact]
    public async Task A_search_that_is_called_off_gives_its_ports_back()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var silent = new PseudoTerminal();
        using var stop = new CancellationTokenSource();
        var search = Search(Short with { Listening = TimeSpan.FromMinutes(5) }).Search([silent.SlavePath], null, stop.Token).ToListAsync(CancellationToken.None).AsTask();
        SpinWait.SpinUntil(() => silent.HasReader, TimeSpan.FromSeconds(30));
        Assert.True(silent.HasReader);
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => search);
        Assert.False(silent.HasReader);
    }

    private static PortSearch Search(SearchSettings settings) => new(settings, TimeProvider.System, new SystemTree());

    private sealed class Told(List<SearchProgress> all) : IProgress<SearchProgress>
    {
        public void Report(SearchProgress value)
        {
            lock (all)
                all.Add(value);
        }
    }
}
