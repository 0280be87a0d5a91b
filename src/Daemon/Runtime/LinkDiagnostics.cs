namespace ScaleLink.Daemon.Runtime;

/// <summary>What is wrong with a port.</summary>
internal static class LinkDiagnostics
{
    /// <summary>The device node is not there.</summary>
    public static Diagnostic Missing(string port, string known) => new(LinkCodes.PortMissing, $"{port} is not there.",
        known.Length > 0 ? $"Plug the adapter in, or correct the link; ports seen now: {known}." : "Plug the adapter in; no serial port is seen now.");

    /// <summary>This user may not open it.</summary>
    public static Diagnostic Forbidden(string port) => new(LinkCodes.PortForbidden, $"{port} may not be opened by this user.",
        "Add the user to the group that owns the port (often dialout), then log in again.");

    /// <summary>Another program has it.</summary>
    public static Diagnostic Busy(string port, string? by = null) => new(LinkCodes.PortBusy, $"{port} is held by another program{(by is null ? "" : $": {by}")}.",
        "Stop the other program; a modem service that probes adapters is a usual one.");

    /// <summary>It is no serial port.</summary>
    public static Diagnostic NotSerial(string port) => new(LinkCodes.NotSerialPort, $"{port} is not a serial port.",
        "Name the adapter's device, such as /dev/serial/by-path/....");

    /// <summary>It went away while it was open.</summary>
    public static Diagnostic HungUp(string port) => new(LinkCodes.PortHungUp, $"{port} hung up.",
        "Check cable, adapter and hub; the link opens again by itself.");

    /// <summary>It is open, and nothing comes.</summary>
    public static Diagnostic Silent(string port, TimeSpan after) => new(LinkCodes.LinkSilent, FormattableString.Invariant($"Nothing came from {port} for {after.TotalSeconds:0.#} s; it is opened again, and again until something does."),
        "Check the power of pad and device server, and the cables.");

    /// <summary>The driver left out what it cannot do.</summary>
    /// <param name="port">The port.</param>
    /// <param name="line">How characters were to be sent.</param>
    public static Diagnostic LineNotAsAsked(string port, string line) => new(LinkCodes.LineNotAsAsked, $"The driver of {port} does not send as asked, {line}; the port is read with what it does.",
        "If the pad's values are garbled or missing, use another adapter, or set pad and bay file to 8 data bits without parity.");

    /// <summary>A device server refused or dropped the connection.</summary>
    public static Diagnostic Unreachable(string host, string why) => new(LinkCodes.ServerUnreachable, $"{host} cannot be reached: {why}",
        "Check that the device server runs and that its address and port are right.");

    /// <summary>Another daemon has it.</summary>
    /// <param name="port">The port.</param>
    /// <param name="by">Process, machine, bay and since when.</param>
    public static Diagnostic Taken(string port, string by) => new(LinkCodes.PortHeld, $"{port} is held by another ScaleLink daemon: {by}.",
        "End that daemon, or take the port out of one of the two bay files; this daemon opens it by itself once it is free.");

    /// <summary>Anything else the system said.</summary>
    public static Diagnostic Other(string port, string why) => new(LinkCodes.PortUnusable, $"{port} cannot be used: {why}",
        "Pull the adapter out and plug it in again; if it stays, try another adapter.");
}
