namespace CarOnPads.Ports;

/// <summary>
/// The host's end of a pad's cable. Nothing here ever blocks: the car does not wait for a reader. One thread uses it.
/// </summary>
interface IPadPort : IDisposable
{
    /// <summary>What a host opens: a path, or <c>tcp://127.0.0.1:PORT</c>.</summary>
    string Address { get; }

    /// <summary>The cable is in.</summary>
    bool Plugged { get; }

    /// <summary>Somebody has the port open.</summary>
    bool HasReader { get; }

    /// <summary>Bytes thrown away because nobody listened or the reader was too slow.</summary>
    long LostBytes { get; }

    /// <summary>Hands bytes to the reader, as many as fit; the rest is thrown away and counted.</summary>
    void Write(ReadOnlySpan<byte> bytes);

    /// <summary>What the host has sent, up to the buffer's length; 0 when there is nothing.</summary>
    int Read(Span<byte> buffer);

    /// <summary>Pulls the cable: the reader sees a hang-up and the address is gone.</summary>
    void Unplug();

    /// <summary>Puts it back under the same address.</summary>
    void Replug();
}
