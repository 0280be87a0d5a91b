using System.ComponentModel;
using System.Runtime.Versioning;
using Microsoft.Win32.SafeHandles;

namespace ScaleLink.Probing.Ports;

/// <summary>A port read by the calls of Linux: a character with a wrong parity comes as zero, so that the wrong one is told from the right one.</summary>
[SupportedOSPlatform("linux")]
internal sealed class SystemPort : ProbedPort
{
    private const int RoomWithinMs = 500;

    private readonly string _name;
    private readonly SafeFileHandle _port;
    private readonly SafeFileHandle _bell;

    /// <exception cref="Win32Exception">The system refused.</exception>
    public SystemPort(string name, int baud, CharacterFormat format, TimeProvider time)
        : base(name, time)
    {
        _name = name;
        _port = Terminal.Open(name);
        try
        {
            Terminal.Set(_port, Settings(baud, format));
            _bell = Terminal.NewBell();
        }
        catch
        {
            _port.Dispose();
            throw;
        }
    }

    public override bool TrySet(int baud, CharacterFormat format)
    {
        try
        {
            var asked = Settings(baud, format);
            // Some drivers leave out what they cannot do without a word. A pseudo-terminal always does: nobody is on its line who could mind.
            return Terminal.Set(_port, asked).SendsAs(asked) || SystemTree.RealPath(_name).StartsWith("/dev/pts/", StringComparison.Ordinal);
        }
        catch (Win32Exception) when (Path.Exists(_name))
        {
            return false;
        }
        catch (Win32Exception e)
        {
            throw Gone(e);
        }
    }

    public override void Write(byte[] bytes)
    {
        try
        {
            for (ReadOnlySpan<byte> rest = bytes; !rest.IsEmpty;)
            {
                if (Terminal.Write(_port, rest) is { } taken)
                    rest = rest[taken..];
                else if (!Terminal.Wait(_port, Terminal.CanWrite, _bell, RoomWithinMs))
                    throw Gone(null);
            }
        }
        catch (Win32Exception e)
        {
            throw Gone(e);
        }
    }

    public override void Dispose()
    {
        _port.Dispose();
        _bell.Dispose();
    }

    protected override int Read(byte[] buffer, int milliseconds)
    {
        try
        {
            if (!Terminal.Wait(_port, Terminal.CanRead, _bell, milliseconds))
                return 0;
            return Terminal.Read(_port, buffer) switch
            {
                null => 0,
                0 => throw Gone(null),
                var read => read.Value,
            };
        }
        catch (Win32Exception e)
        {
            throw Gone(e);
        }
    }

    private static TerminalSettings Settings(int baud, CharacterFormat format) => TerminalSettings.Of(baud, format.Parity, format.DataBits, format.StopBits);
}
