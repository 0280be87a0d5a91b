using System.Diagnostics;

namespace Shared.Rig;

/// <summary>What the command kill does.</summary>
internal static class Signals
{
    /// <summary>Sends a signal, such as <c>-STOP</c>; it has been sent when this returns.</summary>
    public static void Send(int process, string signal)
    {
        using var kill = Process.Start("kill", [signal, $"{process}"]);
        kill.WaitForExit();
    }
}
