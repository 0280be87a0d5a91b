using System.Buffers;
using ScaleLink.Daemon.Links;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Daemon.Bay;

/// <summary>Pad frames: asks for the hello, then hands on hellos and samples.</summary>
internal sealed class PadFrameProtocol : IPadProtocol
{
    private readonly PadFrameDecoder _decoder = new();
    private readonly byte[] _greeting;

    public PadFrameProtocol()
    {
        Span<byte> frame = stackalloc byte[PadFrameWriter.MaxFrameLength];
        _greeting = [0, .. frame[..PadFrameWriter.WriteAskHello(frame)]];
    }

    public ReadOnlyMemory<byte> Greeting => _greeting;

    public ProtocolCounters Counters => new(_decoder.Counters.Frames, _decoder.Counters.BadFrames, _decoder.Counters.SkippedBytes);

    public SequencePosition Decode(in ReadOnlySequence<byte> bytes, long arrivalNs, IPadSink sink)
    {
        var rest = bytes;
        SequencePosition consumed;
        while (_decoder.TryRead(rest, out consumed, out _, out var frame))
        {
            HandOn(frame, arrivalNs, sink);
            rest = rest.Slice(consumed);
        }

        return consumed;
    }

    private static void HandOn(in PadFrame frame, long arrivalNs, IPadSink sink)
    {
        if (frame.Kind == FrameKind.Sample && SampleFrame.TryParse(frame.Body, out var sample))
            sink.OnSample(ToRaw(sample, arrivalNs));
        else if (frame.Kind == FrameKind.Hello && HelloFrame.TryParse(frame.Body, out var hello))
            Introduce(hello, sink);
    }

    private static void Introduce(HelloFrame hello, IPadSink sink)
    {
        if (!hello.IsSupported)
            sink.OnRefusal(PadCodes.FrameVersionUnknown, $"The pad speaks version {hello.Version} of pad frames.", $"Load pad firmware that speaks version {HelloFrame.CurrentVersion}, or a newer daemon.");
        else
            sink.OnIdentity(new PadIdentity(hello.SerialNumber, hello.Firmware, hello.BootId, hello.Cells, hello.SampleRateMillihertz / 1000.0, hello.CapacityGrams / 1000.0));
    }

    private static RawSample ToRaw(in SampleFrame frame, long arrivalNs)
    {
        var counts = new CellCounts();
        for (var cell = 0; cell < frame.Cells; cell++)
            counts[cell] = frame[cell];
        return new RawSample
        {
            Sequence = frame.Sequence,
            DeviceMicroseconds = frame.DeviceMicroseconds,
            ArrivalNs = arrivalNs,
            Counts = counts,
            Cells = frame.Cells,
            Status = frame.Status,
            PitchDegrees = frame.PitchDegrees,
            RollDegrees = frame.RollDegrees,
            TemperatureCelsius = frame.TemperatureCelsius,
        };
    }
}
