using ScaleLink.Daemon.Links;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Protocol.Recordings;

namespace ScaleLink.Daemon.Recording;

/// <summary>Opens the links of one port and keeps on tape how that went. The same refusal at every attempt is kept once.</summary>
internal sealed class RecordingLinkFactory(ILinkFactory links, LinkTape tape, BayClock clock) : ILinkFactory
{
    private string _lastRefusal = "";

    public ILink Open(LinkAddress address)
    {
        try
        {
            var link = links.Open(address);
            _lastRefusal = "";
            tape.Write(RecordingEventKind.Open, address.Name, clock.NowNs);
            return new RecordingLink(link, tape, clock);
        }
        catch (LinkEndedException e)
        {
            var refusal = $"{e.Diagnostic.Code} {e.Diagnostic.Message}";
            if (refusal != _lastRefusal)
                tape.Write(RecordingEventKind.NotOpen, refusal, clock.NowNs);
            _lastRefusal = refusal;
            throw;
        }
    }
}
