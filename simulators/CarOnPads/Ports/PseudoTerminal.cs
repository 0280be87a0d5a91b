using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace CarOnPads.Ports;

/// <summary>
/// A serial port without hardware: whoever opens <see cref="SlavePath"/> talks to the holder of this object. The
/// terminal is raw before the first byte. Disposing it is a hang-up, as when an adapter is pulled. Thread-safe.
/// </summary>
[UnsupportedOSPlatform("windows")]
sealed class PseudoTerminal : IDisposable
{
    readonly Lock _gate = new();
    int _master;
    bool _heard;

    /// <summary>Opens a new pair.</summary>
    /// <exception cref="IOException">The system gives none; the message says which call failed.</exception>
    public PseudoTerminal()
    {
        _master = Posix.Open("/dev/ptmx");
        try
        {
            SlavePath = Posix.Unlock(_master);
            OpenAndCloseSlave();
        }
        catch
        {
            Posix.Close(_master);
            throw;
        }
    }

    /// <summary>What a reader opens.</summary>
    public string SlavePath { get; }

    /// <summary>Bytes thrown away because nobody had the slave open or its reader was too slow.</summary>
    public long LostBytes { get; private set; }

    /// <summary>Somebody has the slave open now. False after disposal.</summary>
    public bool HasReader
    {
        get
        {
            lock (_gate)
                return _master >= 0 && Listens();
        }
    }

    /// <summary>Rate and parity as the slave's reader has set them; nothing after disposal and where the system does not tell.</summary>
    public LineSetting? SetByReader
    {
        get
        {
            lock (_gate)
                return _master >= 0 ? Posix.SettingOf(_master) : null;
        }
    }

    /// <summary>Gives the reader as much as fits, never waiting; the rest is lost and counted.</summary>
    /// <returns>Bytes taken.</returns>
    public int Write(ReadOnlySpan<byte> bytes)
    {
        lock (_gate)
        {
            var taken = _master >= 0 && Listens() ? WriteWhatFits(bytes) : 0;
            LostBytes += bytes.Length - taken;
            return taken;
        }
    }

    /// <summary>Reads what the other side has written, never waiting.</summary>
    /// <returns>Bytes read; 0 when there are none, nobody is there, or the terminal is disposed.</returns>
    public int Read(Span<byte> buffer)
    {
        lock (_gate)
        {
            if (_master < 0 || buffer.IsEmpty)
                return 0;
            var read = Posix.Read(_master, buffer);
            return read > 0 ? (int)read : 0;
        }
    }

    /// <summary>Hangs up.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            if (_master >= 0)
                Posix.Close(_master);
            _master = -1;
        }
    }

    // A master shows a hang-up while its slave is closed, but only once the slave has been open: so it is opened here.
    void OpenAndCloseSlave()
    {
        var slave = Posix.Open(SlavePath);
        try
        {
            Posix.MakeRaw(slave);
        }
        finally
        {
            Posix.Close(slave);
        }
    }

    bool Listens()
    {
        var listens = (Posix.Poll(_master, 0, 0) & Posix.PollHangUp) == 0;

        // macOS puts a slave back to its defaults at the last close; Linux keeps it while the master is open.
        if (listens && !_heard && OperatingSystem.IsMacOS())
            Posix.MakeRaw(_master);
        _heard = listens;
        return listens;
    }

    int WriteWhatFits(ReadOnlySpan<byte> bytes)
    {
        var taken = 0;
        while (taken < bytes.Length)
        {
            var written = Posix.Write(_master, bytes[taken..]);
            if (written > 0)
                taken += (int)written;
            else if (written == 0 || Marshal.GetLastPInvokeError() != Posix.Interrupted)
                break;
        }

        return taken;
    }
}
