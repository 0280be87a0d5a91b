using System.Runtime.Versioning;
using CarOnPads.Runtime;

namespace CarOnPads.Ports;

/// <summary>A pad's cable as a pseudo-terminal under a name that stays the same across pulling and replugging.</summary>
[UnsupportedOSPlatform("windows")]
sealed class PseudoTerminalPort : IPadPort
{
    readonly StableName _name;
    PseudoTerminal? _terminal;
    long _lost;

    /// <summary>Opens a terminal under <paramref name="directory"/>/<paramref name="name"/>.</summary>
    /// <exception cref="SimulatorException">CP-301 the name is taken by something else; CP-302 no terminal.</exception>
    public PseudoTerminalPort(string directory, string name)
    {
        _name = new StableName(Path.Combine(directory, name));
        Replug();
    }

    /// <inheritdoc/>
    public string Address => _name.Link;

    /// <inheritdoc/>
    public bool Plugged => _terminal is not null;

    /// <inheritdoc/>
    public bool HasReader => _terminal?.HasReader ?? false;

    /// <summary>What the reader has set; nothing where the system does not tell.</summary>
    public LineSetting? SetByReader => _terminal?.SetByReader;

    /// <inheritdoc/>
    public long LostBytes => _lost + (_terminal?.LostBytes ?? 0);

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        if (_terminal is null)
            _lost += bytes.Length;
        else
            _terminal.Write(bytes);
    }

    /// <inheritdoc/>
    public int Read(Span<byte> buffer) => _terminal?.Read(buffer) ?? 0;

    /// <inheritdoc/>
    public void Unplug()
    {
        if (_terminal is null)
            return;
        // The name goes first: nobody shall find it leading to a dead terminal, or to a stranger's new one.
        _name.Remove();
        _lost += _terminal.LostBytes;
        _terminal.Dispose();
        _terminal = null;
    }

    /// <inheritdoc/>
    public void Replug()
    {
        if (_terminal is not null)
            return;
        try
        {
            var terminal = new PseudoTerminal();
            _name.PointTo(terminal.SlavePath);
            _terminal = terminal;
        }
        catch (IOException e)
        {
            throw new SimulatorException("CP-302", $"No pseudo-terminal for {Address}: {e.Message}", "Check that /dev/ptmx exists and the directory can be written, or use --tcp.");
        }
    }

    /// <summary>Hangs up and removes the name.</summary>
    public void Dispose() => Unplug();
}
