using System.Buffers;

namespace ScaleLink.Daemon.Links;

/// <summary>Makes samples from the bytes of one opened link to which the pad speaks by itself. Used once, like the link.</summary>
internal interface IPadProtocol
{
    /// <summary>Asks the pad who it is: sent when the link opens, and again while bytes come and nobody has said. Empty: it cannot be asked.</summary>
    ReadOnlyMemory<byte> Greeting { get; }

    /// <summary>Takes what it can from <paramref name="bytes"/> and tells the sink; gives the position up to which it is done.</summary>
    SequencePosition Decode(in ReadOnlySequence<byte> bytes, long arrivalNs, IPadSink sink);

    /// <summary>A pause in the stream of this length ends a message that has no other end; absent: pauses mean nothing.</summary>
    TimeSpan? Pause => null;

    /// <summary>The stream has paused: takes all of <paramref name="rest"/>, whose last byte came at <paramref name="arrivalNs"/>.</summary>
    void Finish(in ReadOnlySequence<byte> rest, long arrivalNs, IPadSink sink)
    {
    }

    /// <summary>What has been decoded since the link opened.</summary>
    ProtocolCounters Counters { get; }
}

/// <summary>Totals of one opened link.</summary>
internal readonly record struct ProtocolCounters(long Frames, long BadFrames, long SkippedBytes);

/// <summary>Where decoded messages go.</summary>
internal interface IPadSink
{
    /// <summary>The pad has said who it is.</summary>
    void OnIdentity(PadIdentity identity);

    /// <summary>A sample came.</summary>
    void OnSample(in RawSample sample);

    /// <summary>The pad cannot be used as it is.</summary>
    void OnRefusal(Code code, Sentence message, Sentence remedy);

    /// <summary>Something is wrong with the source, in effect until <see cref="OnTroubleOver"/>. When it <paramref name="stops"/> the pad, nothing the pad has said before counts any more.</summary>
    void OnTrouble(Code code, Sentence message, Sentence remedy, bool stops);

    /// <summary>That trouble is over.</summary>
    void OnTroubleOver(Code code);
}

/// <summary>The cells or the tilt of one pad, as its link sees it.</summary>
internal interface IPadSource : IPadSink
{
    /// <summary>For the log: the corner, and which of its sources when it has two.</summary>
    string Name { get; }

    /// <summary>Nobody has said yet who speaks; or somebody has, was silent, and may have changed places meanwhile.</summary>
    bool IsUnknown { get; }

    /// <summary>The link is open; <paramref name="counters"/> tells what has been decoded on it since.</summary>
    void LinkOpened(Func<ProtocolCounters> counters);

    /// <summary>The link has ended, or did not open.</summary>
    void LinkFailed(Diagnostic fault);

    /// <summary>Bytes came from it.</summary>
    void Received(int bytes);
}
