using System.Buffers;
using ScaleLink.Protocol.PadFrames;

namespace CarOnPads.Pads;

/// <summary>What the host says to a pad, and the pad's answers.</summary>
sealed class HostFrames(Pad pad)
{
    const int LongestBlink = 60;
    readonly PadFrameDecoder _decoder = new();
    byte[] _pending = [];

    public void Receive(ReadOnlySpan<byte> bytes, double now)
    {
        byte[] all = [.. _pending, .. bytes];
        var input = new ReadOnlySequence<byte>(all);
        bool found;
        do
        {
            found = _decoder.TryRead(input, out var consumed, out _, out var frame);
            if (found)
                Answer(frame, now);
            input = input.Slice(consumed);
        }
        while (found);
        _pending = input.ToArray();
    }

    void Answer(PadFrame frame, double now)
    {
        if (frame.Kind == FrameKind.AskHello)
            pad.Hello(now);
        else if (frame.Kind == FrameKind.Set && SettingFrame.TryParse(frame.Body, out var wish))
            pad.Acknowledge(Obey(wish), now);
    }

    AckFrame Obey(SettingFrame wish) => wish.Setting switch
    {
        PadSetting.SampleRate => Rate(wish),
        PadSetting.Identify => Identify(wish),
        _ => new AckFrame(wish.RequestId, AckResult.UnknownSetting, 0),
    };

    AckFrame Rate(SettingFrame wish)
    {
        var good = wish.Value is >= (int)(1000 * Pad.SlowestHertz) and <= (int)(1000 * Pad.FastestHertz);
        if (good)
            pad.SetRate(wish.Value / 1000.0);
        return new AckFrame(wish.RequestId, good ? AckResult.Done : AckResult.OutOfRange, (int)Math.Round(1000 * pad.Hertz));
    }

    AckFrame Identify(SettingFrame wish)
    {
        var good = wish.Value is >= 0 and <= LongestBlink;
        if (good)
            pad.Blinking = wish.Value;
        return new AckFrame(wish.RequestId, good ? AckResult.Done : AckResult.OutOfRange, pad.Blinking);
    }
}
