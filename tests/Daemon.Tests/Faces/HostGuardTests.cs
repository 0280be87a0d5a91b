using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Faces.Page;

namespace Daemon.Tests.Faces;

/// <summary>Under which names a browser gets an answer.</summary>
public class HostGuardTests
{
    private static readonly ListenConfiguration Alone = new("127.0.0.1", 5480, 5481);
    private static readonly ListenConfiguration Open = new("0.0.0.0", 5480, 5481) { OtherMachines = true, Names = ["unit6-pc"] };

    [Theory]
    [InlineData("localhost")]
    [InlineData("LOCALHOST")]
    [InlineData("127.0.0.1")]
    [InlineData("[::1]")]
    public void This_machine_is_always_admitted(string host)
    {
        Assert.True(new HostGuard(Alone).Admits(host));
        Assert.True(new HostGuard(Open).Admits(host));
    }

    [Theory]
    [InlineData("")]
    [InlineData("stranger.example")]
    [InlineData("localhost.stranger.example")]
    [InlineData("127.0.0.1.stranger.example")]
    public void A_name_that_was_not_given_is_never_admitted(string host)
    {
        Assert.False(new HostGuard(Alone).Admits(host));
        Assert.False(new HostGuard(Open).Admits(host));
    }

    [Theory]
    [InlineData("192.0.2.7")]
    [InlineData("Unit6-PC")]
    public void Other_addresses_and_given_names_are_admitted_once_other_machines_are(string host)
    {
        Assert.False(new HostGuard(Alone).Admits(host));
        Assert.True(new HostGuard(Open).Admits(host));
    }
}
