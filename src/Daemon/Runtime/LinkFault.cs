
namespace ScaleLink.Daemon.Runtime;

/// <summary>What is wrong with a port, and the mend. Codes are stable: 100s.</summary>
public sealed record LinkFault(string Code, string Message, string Mend)
{
    /// <summary>Code and message in one line.</summary>
    public string Describe() => $"{Code} {Message}";

    /// <summary>The device node is not there.</summary>
    public static LinkFault Missing(string port, string known) => new("SL-101", $"{port} is not there.",
        known.Length > 0 ? $"Plug the adapter in, or correct the link; ports seen now: {known}." : "Plug the adapter in; no serial port is seen now.");

    /// <summary>This user may not open it.</summary>
    public static LinkFault Forbidden(string port) => new("SL-102", $"{port} may not be opened by this user.",
        "Add the user to the group that owns the port (often dialout), then log in again.");

    /// <summary>Another program has it; by name where that is known.</summary>
    public static LinkFault Busy(string port, string? by = null) => new("SL-103", $"{port} is held by another program{(by is null ? "" : $": {by}")}.",
        "Stop the other program; a modem service that probes adapters is a usual one.");

    /// <summary>It is no serial port.</summary>
    public static LinkFault NotSerial(string port) => new("SL-104", $"{port} is not a serial port.",
        "Name the adapter's device, such as /dev/serial/by-path/....");

    /// <summary>It went away while it was open.</summary>
    public static LinkFault HungUp(string port) => new("SL-105", $"{port} hung up.",
        "Check cable, adapter and hub; the link opens again by itself.");

    /// <summary>A device server refused or dropped the connection.</summary>
    public static LinkFault Unreachable(string host, string why) => new("SL-107", $"{host} cannot be reached: {why}",
        "Check that the device server runs and that its address and port are right.");

    /// <summary>Another daemon of this machine reads it.</summary>
    public static LinkFault Taken(string port, string by) => new("SL-108", $"{port} is held by another ScaleLink daemon: {by}.",
        "End that daemon, or take the port out of one of the two bay files; this daemon opens it by itself once it is free.");

    /// <summary>Anything else the system said.</summary>
    public static LinkFault Other(string port, string why) => new("SL-109", $"{port} cannot be used: {why}",
        "Pull the adapter out and plug it in again; if it stays, try another adapter.");
}

/// <summary>Ends a link for good.</summary>
public sealed class LinkFaultException(LinkFault fault, Exception? inner = null) : IOException(fault.Message, inner)
{
    /// <summary>Why.</summary>
    public LinkFault Fault { get; } = fault;
}
