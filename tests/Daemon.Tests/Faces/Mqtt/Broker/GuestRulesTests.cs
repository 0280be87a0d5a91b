using ScaleLink.Daemon.Faces.Mqtt.Broker;

namespace Daemon.Tests.Faces.Mqtt.Broker;

public class GuestRulesTests
{
    [Theory]
    [InlineData("scalelink/v1/unit6/loads")]
    [InlineData("ScaleLink/v1/unit6/loads")]
    [InlineData("SCALELINK/v1")]
    [InlineData("scalelink/")]
    [InlineData("scalelink")]
    [InlineData("ScaleLink")]
    [InlineData("/scalelink/v1/unit6/loads")]
    [InlineData("//ScaleLink/v1/unit6/loads")]
    public void Topics_of_the_daemon_and_what_looks_like_them_are_its_own(string topic) => Assert.True(GuestRules.IsOwn(topic));

    [Theory]
    [InlineData("scalelinks/v1")]
    [InlineData("lap-timer/scalelink/v1")]
    [InlineData("scale/link")]
    [InlineData("/")]
    [InlineData("")]
    public void All_others_are_free(string topic) => Assert.False(GuestRules.IsOwn(topic));
}
