using System.Buffers;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Links;
using ScaleLink.Protocol.Readings;
using ScaleLink.Protocol.TextLines;

namespace ScaleLink.Daemon.Bay;

/// <summary>
/// Lines of text. Nothing calibrates their digits, or only a weak checksum does: a source that garbles some lines is therefore not believed in the
/// others either, and a single reading that stands off between two that agree is dropped.
/// </summary>
internal sealed class TextLineProtocol : IPadProtocol
{
    private const int MostRefused = 3;
    private const int MostRefusedWithChecksum = 5;
    // A car on its pads does not change by a thousandth of their capacity for one line only.
    private const double SpikeOfCapacity = 0.001;

    private readonly PadConfiguration _pad;
    private readonly TextLineDecoder _decoder;
    private readonly RefusalWatch _refusals;
    private readonly SpikeGuard? _guard;
    private readonly string _device;
    private bool _isIntroduced;
    private long _refused, _read;

    public TextLineProtocol(PadConfiguration pad, SourceConfiguration source)
    {
        var text = source.Text!;
        (_pad, _decoder, _device) = (pad, new TextLineDecoder(text.Pattern, text.End), source.Link);
        _refusals = new RefusalWatch(text.Pattern.IsChecked ? MostRefusedWithChecksum : MostRefused);
        Pause = text.Pause;
        if (text.Pattern.Rules.Any(r => r.Meaning == FieldMeaning.Load) && pad is { KgPerCount: { } kg, CapacityKg: { } capacity })
            _guard = new SpikeGuard(capacity * SpikeOfCapacity / Math.Abs(kg));
    }

    public ReadOnlyMemory<byte> Greeting => default;

    public TimeSpan? Pause { get; }

    public ProtocolCounters Counters => new(_decoder.Counters.Lines, _decoder.Counters.RefusedLines, _decoder.Counters.SkippedBytes);

    public SequencePosition Decode(in ReadOnlySequence<byte> bytes, long arrivalNs, IPadSink sink)
    {
        var rest = bytes;
        SequencePosition consumed;
        while (_decoder.TryRead(rest, out consumed, out _, out var reading))
        {
            Judge(sink);
            HandOn(reading, arrivalNs, sink);
            rest = rest.Slice(consumed);
        }

        Judge(sink);
        return consumed;
    }

    public void Finish(in ReadOnlySequence<byte> rest, long arrivalNs, IPadSink sink)
    {
        var isReading = _decoder.TryFinish(rest, out var reading);
        Judge(sink);
        if (isReading)
            HandOn(reading, arrivalNs, sink);
    }

    private void Judge(IPadSink sink)
    {
        var (lines, refused) = (_decoder.Counters.Lines - _read, _decoder.Counters.RefusedLines - _refused);
        (_read, _refused) = (_read + lines, _refused + refused);
        var before = _refusals.IsBad;
        _refusals.Add((int)lines, (int)refused);
        if (_refusals.IsBad && (refused > 0 || !before))
            sink.OnTrouble(PadCodes.LinesNotUnderstood, $"Lines are not understood, such as \"{_decoder.LastRefused}\".", "Compare the line with pattern in the bay file; when it looks garbled, check baud rate and cable.", stops: true);
        else if (before && !_refusals.IsBad)
            sink.OnTroubleOver(PadCodes.LinesNotUnderstood);
    }

    private void HandOn(in PadReading reading, long arrivalNs, IPadSink sink)
    {
        if (_refusals.IsBad)
            return;
        if (!_isIntroduced)
            sink.OnIdentity(DeclaredPad.Identity(_pad, _device, reading.Cells, 0));
        _isIntroduced = true;
        if (_guard is null)
            sink.OnSample(DeclaredPad.Sample(reading, arrivalNs));
        else if (_guard.TryPass(reading, arrivalNs, out var passed, out var passedAt))
            sink.OnSample(DeclaredPad.Sample(passed, passedAt));
    }
}
