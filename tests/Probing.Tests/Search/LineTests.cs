using System.IO.Ports;
using System.Runtime.Versioning;
using CarOnPads.Ports;
using ScaleLink.Probing.Ports;

namespace Probing.Tests.Search;

/// <summary>A port that is set by the system's own calls, against a simulated device that heeds what is set.</summary>
[UnsupportedOSPlatform("windows")]
public sealed class LineTests : IDisposable
{
    private static readonly byte[] Said = [.. "ST,GS,+012.50kg\r\n"u8];
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scalelink-line-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Both_understand_each_other_only_where_rate_and_parity_are_the_same()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only Linux tells what the reader of a pseudo-terminal has set.");
        using var device = new LinePort(new PseudoTerminalPort(_folder.FullName, "LF"), new LineSetting(9600, LineParity.Even));
        using var port = ProbedPort.Open(device.Address, 9600, new CharacterFormat(Parity.Even), TimeProvider.System);
        Assert.Equal(Said, Heard(device, port));
        Assert.Equal(Said, Asked(device, port));

        Assert.True(port.TrySet(9600, new CharacterFormat(Parity.Odd)));
        Assert.All(Heard(device, port), value => Assert.Equal(0, value));
        Assert.Empty(Asked(device, port));

        Assert.True(port.TrySet(19200, new CharacterFormat(Parity.Even)));
        Assert.NotEqual(Said, Heard(device, port));
        Assert.NotEqual(Said, Asked(device, port));

        // What was heard at the setting before is thrown away with it.
        device.Write(Said);
        Assert.True(port.TrySet(9600, new CharacterFormat(Parity.Even)));
        Assert.Equal(Said, Heard(device, port));
    }

    [Fact]
    public void A_port_that_goes_away_is_told_at_once()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals of Linux.");
        using var device = new PseudoTerminalPort(_folder.FullName, "LF");
        using var port = ProbedPort.Open(device.Address, 9600, CharacterFormat.Usual, TimeProvider.System);
        device.Unplug();
        Assert.Equal("SL-475", Assert.Throws<PortException>(() => Heard(device, port)).Diagnostic.Code.Text);
        Assert.Equal("SL-475", Assert.Throws<PortException>(() => port.TrySet(19200, CharacterFormat.Usual)).Diagnostic.Code.Text);
    }

    private static byte[] Heard(IPadPort device, ProbedPort port)
    {
        device.Write(Said);
        var heard = new List<byte>();
        port.Listen(TimeSpan.FromMilliseconds(200), bytes =>
        {
            heard.AddRange(bytes);
            return true;
        }, TestContext.Current.CancellationToken);
        return [.. heard];
    }

    private static byte[] Asked(LinePort device, ProbedPort port)
    {
        port.Write(Said);
        var buffer = new byte[4096];
        return buffer[..device.Read(buffer)];
    }
}
