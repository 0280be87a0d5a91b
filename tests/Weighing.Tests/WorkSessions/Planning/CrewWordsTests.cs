using ScaleLink.Weighing.WorkSessions.Planning;

namespace Weighing.Tests.WorkSessions.Planning;

public class CrewWordsTests
{
    [Theory]
    [InlineData(0, 0.75, 1.25, 0, "LR up 1¼ turns, RF up ¾: then settle", "LR up 1 1/4 turns, RF up 3/4: then settle")]
    [InlineData(-0.125, 0, 0, 0, "LF down ⅛ turn: then settle", "LF down 1/8 turn: then settle")]
    [InlineData(1, -2, 0, 0.375, "RF down 2 turns, LF up 1, RR up ⅜: then settle", "RF down 2 turns, LF up 1, RR up 3/8: then settle")]
    [InlineData(0, 0, 0, 0.3, "RR up 0.3 turn: then settle", "RR up 0.3 turn: then settle")]
    [InlineData(0, 0, 0, 0, "nothing to turn", "nothing to turn")]
    public void Turns_are_called_out_largest_first(double lf, double rf, double lr, double rr, string words, string plain)
    {
        Assert.Equal(words, CrewWords.Say(new(lf, rf, lr, rr)));
        Assert.Equal(plain, CrewWords.Say(new(lf, rf, lr, rr), plain: true));
    }
}
