using System.Collections.Immutable;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Protocol.Recordings;

namespace ScaleLink.Daemon.Recording;

/// <summary>The tapes of all links, and the link recordings made of them.</summary>
internal sealed class FlightRecorder(BayConfiguration bay, BayClock clock)
{
    // A minute of the fastest pad at 320 samples a second, with room for the head of each read.
    private const int TapeBytes = 1 << 20;

    private static readonly string Software = "scalelink " + (typeof(FlightRecorder).Assembly.GetName().Version?.ToString(3) ?? "0");

    private ImmutableList<RecordedLink> _links = [];

    /// <summary>Every link of the bay, in the order in which they were added.</summary>
    public IReadOnlyList<RecordedLink> Links => _links;

    /// <summary>How far back a tape goes.</summary>
    public TimeSpan Span => bay.Recorder.Span;

    /// <summary>Begins a tape.</summary>
    public LinkTape Add(LinkAddress address, IReadOnlyList<RecordedSource> sources)
    {
        var link = new RecordedLink(address, sources, new LinkTape(TapeBytes, (long)Span.TotalNanoseconds));
        ImmutableInterlocked.Update(ref _links, links => links.Add(link));
        return link.Tape;
    }

    /// <summary>What a link has carried over the last <paramref name="back"/>; nothing when it has carried no bytes.</summary>
    public LinkRecording? Take(RecordedLink link, TimeSpan back, string reason, params IReadOnlyList<string> notes)
    {
        var events = link.Tape.Since(clock.NowNs - (long)back.TotalNanoseconds);
        if (!events.Any(e => e.HasBytes))
            return null;
        var header = new RecordingHeader
        {
            Bay = bay.Bay,
            Link = link.Address.Name,
            Protocol = link.Protocol,
            Line = link.Line,
            Devices = link.Devices,
            Started = clock.ToUtc(0),
            StartId = clock.StartId,
            Software = Software,
            Reason = reason,
            Notes = notes,
        };
        return new LinkRecording(header, events);
    }
}
