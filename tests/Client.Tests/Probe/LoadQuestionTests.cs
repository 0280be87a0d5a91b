using System.Text;
using Client.Tests.Terminal;
using ScaleLink.Client.Probe;
using ScaleLink.Probing.Recognition;

namespace Client.Tests.Probe;

/// <summary>Which number of a line is the load: asked where somebody sits at the terminal. The lines are invented (common practice, no published source).</summary>
public class LoadQuestionTests
{
    private const string Two = "G 262.4 kg N 250.1 kg", One = "262.4 kg";

    [Theory]
    [InlineData("2\n", 2, 1)]
    [InlineData("\n", 1, 1)]
    [InlineData("seven\n3\n2\n", 2, 3)]
    [InlineData("", 1, 1)]
    public void The_answer_is_taken_and_asked_for_again_when_it_is_none(string typed, int load, int questions)
    {
        var (text, shown) = Ask(Two, typed, hasTyping: true);
        Assert.Equal((load, questions), (text.Load, shown.Split("Which number is the load: 1, 2?").Length - 1));
        Assert.Contains("because the word before it says gross", shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Two, false)]
    [InlineData(One, true)]
    public void Nobody_is_asked_without_a_terminal_or_a_choice(string line, bool hasTyping)
    {
        var (text, shown) = Ask(line, "2\n", hasTyping);
        Assert.Equal(1, text.Load);
        Assert.DoesNotContain("Which number", shown, StringComparison.Ordinal);
    }

    private static (FoundText Text, string Shown) Ask(string line, string typed, bool hasTyping)
    {
        var found = TextRecognition.Of(Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat($"{line}\r\n", 6))))!;
        var shown = new StringWriter();
        var shell = Shells.Redirected(shown, TextWriter.Null) with { In = new StringReader(typed), HasTyping = hasTyping };
        var answered = new LoadQuestion(shell).Ask(new PortFinding { Port = "/dev/ttyUSB0", Link = "/dev/ttyUSB0", Found = [found] }, () => { });
        return (Assert.IsType<FoundText>(Assert.Single(answered.Found)), shown.ToString());
    }
}
