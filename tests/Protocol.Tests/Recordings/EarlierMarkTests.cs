using ScaleLink.Protocol.Recordings;
using Shared;

namespace ScaleLink.Protocol.Tests.Recordings;

/// <summary>Link recordings that were written before the form got its present name are still read.</summary>
public class EarlierMarkTests
{
    [Fact]
    public void A_recording_under_the_earlier_mark_is_read_and_written_under_the_present_one()
    {
        var text = RepositoryRoot.Read("docs", "recordings.md").Split("```")[1].Trim('\n');
        var read = LinkRecording.Parse(text);
        var earlier = LinkRecording.Parse(text.Replace("scalelink-recording 1", "scalelink-capture 1").Replace("start-id: ", "run: "));
        Assert.Equal(read.ToText(), earlier.ToText());
        Assert.StartsWith("scalelink-recording 1", earlier.ToText());
        Assert.Contains("start-id: ", earlier.ToText());
    }
}
