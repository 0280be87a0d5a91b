using System.Buffers;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Probing.Recognition;

/// <summary>Whether pad frames are spoken: their check leaves little to chance, three of them none.</summary>
internal static class PadFrameRecognition
{
    private const int FewestFrames = 3;
    private const double OfWhole = 1000;

    public static FoundPadFrames? Of(byte[] heard)
    {
        var decoder = new PadFrameDecoder();
        var rest = new ReadOnlySequence<byte>(heard);
        HelloFrame? hello = null;
        var samples = 0;
        while (decoder.TryRead(rest, out var consumed, out _, out var frame))
        {
            rest = rest.Slice(consumed);
            samples += frame.Kind == FrameKind.Sample ? 1 : 0;
            if (frame.Kind == FrameKind.Hello && HelloFrame.TryParse(frame.Body, out var said))
                hello = said;
        }

        if (hello is null && samples < FewestFrames)
            return null;
        return new FoundPadFrames(samples, hello?.SerialNumber, hello?.Cells, hello?.SampleRateMillihertz / OfWhole, hello?.CapacityGrams / OfWhole);
    }
}
