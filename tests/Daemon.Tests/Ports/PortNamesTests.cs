using ScaleLink.Daemon.Ports;

namespace Daemon.Tests.Ports;

/// <summary>Names that can come to mean another adapter, on a folder laid out as Linux lays out /dev/serial.</summary>
public sealed class PortNamesTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("names-");

    public PortNamesTests()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such names.");
        foreach (var node in new[] { "ttyUSB0", "ttyUSB1", "ttyACM0" })
            File.WriteAllText(In(node), "");
        foreach (var (kind, name, node) in new[]
        {
            ("by-path", "socket-1", "ttyUSB0"), ("by-path", "socket-2", "ttyUSB1"), ("by-path", "socket-3", "ttyACM0"),
            ("by-id", "adapter-of-a-kind", "ttyUSB1"), ("by-id", "board-77", "ttyACM0"),
        })
        {
            Directory.CreateDirectory(In("serial", kind));
            File.CreateSymbolicLink(In("serial", kind, name), In(node));
        }
    }

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_name_by_order_of_plugging_in_is_questioned_and_the_socket_s_name_given()
    {
        var uncertainty = new PortNames(In("serial")).Uncertainty(In("ttyUSB1"));
        Assert.Equal("SL-110", uncertainty?.Code);
        Assert.Contains(In("serial", "by-path", "socket-2"), uncertainty!.Remedy);
    }

    [Fact]
    public void A_socket_s_name_is_sound() => Assert.Null(new PortNames(In("serial")).Uncertainty(In("serial", "by-path", "socket-1")));

    [Fact]
    public void An_adapter_s_name_is_sound_only_while_every_adapter_has_one()
    {
        Assert.Equal("SL-111", new PortNames(In("serial")).Uncertainty(In("serial", "by-id", "adapter-of-a-kind"))?.Code);
        File.CreateSymbolicLink(In("serial", "by-id", "board-78"), In("ttyUSB0"));
        Assert.Null(new PortNames(In("serial")).Uncertainty(In("serial", "by-id", "adapter-of-a-kind")));
    }

    [Fact]
    public void Without_such_names_nothing_is_questioned() => Assert.Null(new PortNames(In("nothing")).Uncertainty(In("ttyUSB0")));

    private string In(params string[] parts) => Path.Combine([_folder.FullName, .. parts]);
}
