using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace Daemon.Tests.Faces.Mqtt.Broker;

public class AllowanceTests
{
    [Fact]
    public void Neither_too_many_things_nor_too_many_bytes()
    {
        var allowance = new Allowance(2, 100);
        Assert.True(allowance.Take("a", 60));
        Assert.False(allowance.Take("b", 41));
        Assert.True(allowance.Take("b", 40));
        Assert.False(allowance.Take("c", 0));
    }

    [Fact]
    public void What_takes_the_place_of_something_counts_instead_of_it()
    {
        var allowance = new Allowance(1, 100);
        Assert.True(allowance.Take("a", 60));
        Assert.True(allowance.Take("a", 100));
        Assert.False(allowance.Take("a", 101));
        Assert.True(allowance.Take("a", 1));
    }

    [Fact]
    public void What_is_given_back_can_be_taken_again()
    {
        var allowance = new Allowance(1, 100);
        Assert.True(allowance.Take("a", 100));
        allowance.GiveBack("b");
        Assert.False(allowance.Take("b", 100));
        allowance.GiveBack("a");
        allowance.GiveBack("a");
        Assert.True(allowance.Take("b", 100));
        Assert.False(allowance.Take("c", 1));
    }
}
