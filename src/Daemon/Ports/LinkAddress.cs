using System.Diagnostics.CodeAnalysis;
using System.IO.Ports;

namespace ScaleLink.Daemon.Ports;

/// <summary>Where a pad's bytes come from: a serial port or a TCP device server.</summary>
internal abstract record LinkAddress
{
    private const string TcpScheme = "tcp://";

    /// <summary>As written in the bay file.</summary>
    public abstract string Name { get; }

    /// <summary>Reads a device path or <c>tcp://host:port</c>.</summary>
    /// <param name="text">As written in the bay file.</param>
    /// <param name="serial">Makes the address of a serial port of that path: how characters are sent stands beside it in the file.</param>
    /// <param name="address">What was read.</param>
    /// <param name="problem">What is wrong with it.</param>
    public static bool TryParse(string text, Func<string, SerialAddress> serial, [NotNullWhen(true)] out LinkAddress? address, out string problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(serial);
        (address, problem) = (null, "");
        if (!text.StartsWith(TcpScheme, StringComparison.OrdinalIgnoreCase))
        {
            address = serial(text);
            return true;
        }

        if (!Uri.TryCreate(text, UriKind.Absolute, out var uri) || uri.Port is < 1 or > 65535 || uri.Host.Length == 0)
        {
            problem = $"\"{text}\" is not tcp://host:port.";
            return false;
        }

        address = new TcpAddress(uri.Host, uri.Port);
        return true;
    }

    /// <summary>What two names of one port have in common: the device node behind every symbolic link.</summary>
    public static string NodeOf(string link)
    {
        if (link.StartsWith(TcpScheme, StringComparison.OrdinalIgnoreCase))
            return link.ToUpperInvariant();
        try
        {
            return File.ResolveLinkTarget(link, returnFinalTarget: true)?.FullName ?? Path.GetFullPath(link);
        }
        catch (IOException)
        {
            return link;
        }
    }
}

/// <summary>Who reads a serial port.</summary>
internal enum PortReader
{
    /// <summary>The calls of Linux themselves; on another system the library all the same.</summary>
    System,
    /// <summary>The serial library of .NET.</summary>
    Library,
}

/// <summary>A serial port: device path (or COM name), bits a second, parity bit.</summary>
internal sealed record SerialAddress(string Port, int Baud, Parity Parity = Parity.None) : LinkAddress
{
    /// <summary>Data bits of a character, 7 or 8.</summary>
    public int DataBits { get; init; } = 8;

    /// <summary>Stop bits behind a character, 1 or 2.</summary>
    public int StopBits { get; init; } = 1;

    /// <summary>Who reads it.</summary>
    public PortReader ReadBy { get; init; }

    /// <summary>How characters are sent, such as <c>9600 even</c>; data and stop bits where they are not 8 and 1.</summary>
    public string Line => $"{Baud} {Parity.ToString().ToLowerInvariant()}" + ((DataBits, StopBits) is (8, 1) ? "" : $" {DataBits} {StopBits}");

    /// <inheritdoc/>
    public override string Name => Port;
}

/// <summary>A raw TCP byte stream.</summary>
internal sealed record TcpAddress(string Host, int Port) : LinkAddress
{
    /// <inheritdoc/>
    public override string Name => $"tcp://{Host}:{Port}";
}
