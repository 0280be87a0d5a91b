using System.Buffers;
using CarOnPads.Ports;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Tests;

/// <summary>A cable whose host end keeps and decodes everything. The bay and its pads are the real ones.</summary>
sealed class Tap : IPadPort
{
    readonly List<byte> _bytes = [];
    readonly Queue<byte> _toPad = new();

    public string Address => "tap";
    public bool Plugged { get; private set; } = true;
    public bool HasReader { get; set; } = true;
    public long LostBytes { get; private set; }
    public byte[] Bytes => [.. _bytes];

    /// <summary>How many bytes arrived with each release.</summary>
    public List<int> Bursts { get; } = [];

    public void Write(ReadOnlySpan<byte> bytes)
    {
        if (!Plugged)
        {
            LostBytes += bytes.Length;
            return;
        }

        _bytes.AddRange(bytes);
        Bursts.Add(bytes.Length);
    }

    public int Read(Span<byte> buffer)
    {
        var read = 0;
        while (read < buffer.Length && _toPad.TryDequeue(out buffer[read]))
            read++;
        return read;
    }

    public void Unplug() => Plugged = false;
    public void Replug() => Plugged = true;
    public void Dispose() => Unplug();

    public void Clear() => _bytes.Clear();

    public void Say(ReadOnlySpan<byte> bytes)
    {
        foreach (var value in bytes)
            _toPad.Enqueue(value);
    }

    /// <summary>Everything heard since the last clearing, in the decoder's words.</summary>
    public Heard Decode()
    {
        var heard = new Heard();
        var decoder = new PadFrameDecoder();
        var input = new ReadOnlySequence<byte>(Bytes);
        while (true)
        {
            var found = decoder.TryRead(input, out var consumed, out _, out var frame);
            if (!found)
                break;
            input = input.Slice(consumed);
            if (SampleFrame.TryParse(frame.Body, out var sample))
                heard.Samples.Add(sample);
            else if (HelloFrame.TryParse(frame.Body, out var hello))
                heard.Hellos.Add(hello);
            else if (AckFrame.TryParse(frame.Body, out var ack))
                heard.Acks.Add(ack);
        }

        heard.Counters = decoder.Counters;
        return heard;
    }
}

/// <summary>Decoded frames in order, and what the decoder thought of the stream.</summary>
sealed class Heard
{
    public List<SampleFrame> Samples { get; } = [];
    public List<HelloFrame> Hellos { get; } = [];
    public List<AckFrame> Acks { get; } = [];
    public DecoderCounters Counters { get; set; }
}
