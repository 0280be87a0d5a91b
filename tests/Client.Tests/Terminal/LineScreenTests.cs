using ScaleLink.Client.Terminal;

namespace Client.Tests.Terminal;

public sealed class LineScreenTests : IDisposable
{
    private readonly StringWriter _output = new();

    public void Dispose() => _output.Dispose();

    [Fact]
    public void Only_changed_lines_are_written()
    {
        using var screen = new LineScreen(Shells.Terminal(_output));
        screen.Show(["one", "two", "three"]);
        _output.GetStringBuilder().Clear();
        screen.Show(["one", "2", "three"]);
        Assert.Equal("\e[2;1H2\e[0m\e[K", _output.ToString());
    }

    [Fact]
    public void Nothing_is_written_when_nothing_changed()
    {
        using var screen = new LineScreen(Shells.Terminal(_output));
        screen.Show(["one"]);
        _output.GetStringBuilder().Clear();
        screen.Show(["one"]);
        Assert.Empty(_output.ToString());
    }

    [Fact]
    public void The_terminal_gets_its_cursor_and_its_old_screen_back()
    {
        new LineScreen(Shells.Terminal(_output)).Dispose();
        Assert.EndsWith("\e[?25h\e[?1049l", _output.ToString());
    }

    [Fact]
    public void Lines_below_the_screen_are_left_out()
    {
        using var screen = new LineScreen(Shells.Terminal(_output, height: 2));
        screen.Show(["one", "two", "three"]);
        Assert.DoesNotContain("three", _output.ToString());
    }
}
