using static System.Buffers.Binary.BinaryPrimitives;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>A host's wish to change a setting.</summary>
/// <param name="RequestId">Comes back in the acknowledgement.</param>
/// <param name="Setting">What to change; numbers beyond the enumeration are carried as they are.</param>
/// <param name="Value">In the setting's own unit.</param>
readonly record struct SettingFrame(byte RequestId, PadSetting Setting, int Value)
{
    const int Length = 8;

    /// <summary>Reads a wish from a whole body. False when it is not one.</summary>
    public static bool TryParse(ReadOnlySpan<byte> body, out SettingFrame setting)
    {
        var good = HasShape(body);
        setting = good ? new SettingFrame(body[2], (PadSetting)body[3], ReadInt32LittleEndian(body[4..])) : default;
        return good;
    }

    internal static bool HasShape(ReadOnlySpan<byte> body) =>
        PadBody.StartsAs(FrameKind.Set, body) && body.Length == Length;

    internal int WriteBody(Span<byte> body)
    {
        PadBody.Start(FrameKind.Set, Length, body);
        body[2] = RequestId;
        body[3] = (byte)Setting;
        WriteInt32LittleEndian(body[4..], Value);
        return Length;
    }
}
