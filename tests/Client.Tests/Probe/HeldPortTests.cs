using System.IO.Ports;
using CarOnPads.Ports;
using Client.Tests.Doctor;

namespace Client.Tests.Probe;

/// <summary>Ports that cannot be opened, each with its cause. Root passes permission and exclusive opening, so these run as somebody else.</summary>
public class HeldPortTests
{
    private const UnixFileMode Everybody = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;

    [Fact]
    public void A_port_that_another_program_has_opened_for_itself_is_named_as_held()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals and users of Linux.");
        using var terminal = new PseudoTerminal();
        File.SetUnixFileMode(terminal.SlavePath, Everybody);
        using var holder = new SerialPort(terminal.SlavePath, 115200);
        holder.Open();
        Assert.Contains("SL-473", OrdinaryUser.Run("probe", terminal.SlavePath));
        holder.BaseStream.Dispose();
    }

    [Theory]
    [InlineData("/dev/no-such-port", "SL-471")]
    [InlineData("/dev/null", "SL-474")]
    public void Other_causes_have_their_own_codes(string port, string code) => Assert.Contains(code, OrdinaryUser.Run("probe", port));

    [Fact]
    public void A_port_of_another_user_is_named_as_forbidden()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Pseudo-terminals and users of Linux.");
        using var terminal = new PseudoTerminal();
        File.SetUnixFileMode(terminal.SlavePath, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Assert.Contains("SL-472", OrdinaryUser.Run("probe", terminal.SlavePath));
    }
}
