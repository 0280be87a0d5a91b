using System.Diagnostics;

namespace Shared;

/// <summary>
/// A program that can be interrupted however the tests were started: a shell starts what runs in its background with interrupts ignored,
/// and every process hands that on to those it starts.
/// </summary>
internal static class Interruptible
{
    /// <summary>How to start a program on .NET; its file and its arguments are to be added.</summary>
    public static ProcessStartInfo Dotnet(string host = "dotnet") => OperatingSystem.IsLinux() ? new ProcessStartInfo("env", ["--default-signal=INT", host]) : new ProcessStartInfo(host);
}
