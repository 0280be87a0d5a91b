using System.Runtime.Versioning;
using CarOnPads.Ports;

namespace CarOnPads.Tests.Ports;

/// <summary>Somebody who has a pseudo-terminal's slave open, as a host has its serial port.</summary>
[UnsupportedOSPlatform("windows")]
sealed class SlaveReader(string path) : IDisposable
{
    const int Patience = 30_000; // ms, only when something is wrong
    readonly int _descriptor = Posix.Open(path);

    public void Write(byte[] bytes) => Assert.Equal(bytes.Length, Posix.Write(_descriptor, bytes));

    /// <summary>Reads until so many bytes have come, or nothing more does.</summary>
    public byte[] Read(int count)
    {
        var all = new byte[count];
        var filled = 0;
        while (filled < count && Posix.Poll(_descriptor, Posix.PollIn, Patience) == Posix.PollIn)
            filled += (int)Posix.Read(_descriptor, all.AsSpan(filled));
        return all[..filled];
    }

    public bool Empty => Posix.Poll(_descriptor, Posix.PollIn, 0) == 0;

    public bool HungUp => (Posix.Poll(_descriptor, Posix.PollIn, Patience) & Posix.PollHangUp) != 0;

    public void Dispose() => Posix.Close(_descriptor);
}
