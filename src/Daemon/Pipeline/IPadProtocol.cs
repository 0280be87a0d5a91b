using System.Buffers;

namespace ScaleLink.Daemon.Pipeline;

/// <summary>Makes samples from the bytes of one opened link. Used once, like the link.</summary>
public interface IPadProtocol
{
    /// <summary>Sent when the link opens.</summary>
    ReadOnlyMemory<byte> Greeting { get; }

    /// <summary>Takes what it can from <paramref name="bytes"/> and tells the sink; gives the position up to which it is done.</summary>
    SequencePosition Decode(in ReadOnlySequence<byte> bytes, long arrivalNs, IPadSink sink);

    /// <summary>What has been decoded since the link opened.</summary>
    ProtocolCounters Counters { get; }
}

/// <summary>Totals of one opened link.</summary>
public readonly record struct ProtocolCounters(long Frames, long BadFrames, long SkippedBytes);

/// <summary>Where decoded messages go.</summary>
public interface IPadSink
{
    /// <summary>The pad has said who it is.</summary>
    void OnIdentity(PadIdentity identity);

    /// <summary>A sample came.</summary>
    void OnSample(in RawSample sample);

    /// <summary>The pad cannot be used as it is.</summary>
    void OnRefusal(string code, string message, string mend);
}
