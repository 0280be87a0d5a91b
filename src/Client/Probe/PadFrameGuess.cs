using System.Buffers;
using System.Globalization;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Client.Probe;

/// <summary>Whether pad frames are spoken: their check leaves little to chance, three of them none.</summary>
internal static class PadFrameGuess
{
    private const int FewestFrames = 3;

    public static Guess? Of(byte[] heard)
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
        List<string> remarks = ["Until it has been calibrated with known masses, a calibration to start with can stand there: kg_per_count = 0.0005"];
        if (hello is null)
            remarks.Add("It has not said who it is while it was listened to: listen for longer, or add its serial_number by hand.");
        return new Guess("pad-frames", Describe(hello, samples), hello is null ? [] : [$"serial_number = {TomlText.Quoted(hello.SerialNumber)}"], remarks);
    }

    private static string Describe(HelloFrame? hello, int samples) => hello is null
        ? $"{samples} samples in pad frames"
        : string.Create(CultureInfo.InvariantCulture, $"{samples} samples in pad frames; {hello.SerialNumber}, {hello.Cells} cells, {hello.SampleRateMillihertz / 1000.0:0.#} a second, {hello.CapacityGrams / 1000.0:0.#} kg");
}
