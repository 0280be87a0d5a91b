using ScaleLink.Client.Runtime;
using ScaleLink.Measure.Sentences;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Interview;

namespace ScaleLink.Client.Cars;

/// <summary>
/// Asks what is needed of a car, one question a line. "&lt;" goes back to the question before, an empty answer takes what is shown, "?" says that nobody
/// knows, "!" or the end of the input leaves; a wrong answer is asked again with the reason. Every answer is in the draft before the next question.
/// </summary>
/// <param name="shell">Where to write.</param>
/// <param name="draft">Where answers are kept.</param>
/// <param name="answer">The next answer; null when there will be none.</param>
internal sealed class CarInterview(Shell shell, CarDraft draft, Func<string?> answer)
{
    private readonly CarDescription _car = new();
    private bool _isToldOfDraft;

    /// <summary>The car; null when it was left before the questions ended.</summary>
    public CarModel? Run()
    {
        shell.WriteLine($"A number, perhaps with a unit and an interval of 95 %: 70, 70 +-3, 400 lb/in, 400 lb/in {shell.Glyphs.PlusMinus}5 %. Motion ratio = spring travel / wheel travel.");
        shell.WriteLine("Enter alone takes what stands in brackets; a guess is marked as one in the file. < goes back, ? takes an answer back, ! leaves and keeps the answers.");
        var at = TakeUp();
        while (at < CarQuestions.All.Count)
        {
            var question = CarQuestions.All[at];
            var line = Line(question);
            if (line is null or "!")
                return null;
            if (line == "<")
                at = Math.Max(0, at - 1);
            else if (Answer(question, line switch { "?" => "", "" => Before(question), _ => line }) is { IsEmpty: false } reason)
                shell.WriteLine($"  {shell.Glyphs.Say(reason)}");
            else
            {
                at++;
                Keep();
            }
        }

        return _car.Car;
    }

    // Answers that mean nothing any more are asked for again, with all that come after them.
    private int TakeUp()
    {
        var answers = draft.Read();
        if (answers is null)
            shell.WriteLine($"  {PeerText.Clean(draft.Path, 200)} cannot be read: it is left out, and the questions begin anew.");
        var at = 0;
        while (answers is not null && at < CarQuestions.All.Count && answers.TryGetValue(CarQuestions.All[at].Key, out var kept) && Answer(CarQuestions.All[at], kept).IsEmpty)
            at++;
        if (at > 0)
            shell.WriteLine($"  Taken up: {at} of {CarQuestions.All.Count} answers of {PeerText.Clean(draft.Path, 200)}. < goes back to them.");
        return at;
    }

    private Sentence Answer(CarQuestion question, string typed) => _car.Answer(question, typed, shell.Glyphs.Units);

    private void Keep()
    {
        if (draft.Keep(_car.Kept) || _isToldOfDraft)
            return;
        _isToldOfDraft = true;
        shell.WriteLine($"  The answers cannot be kept in {PeerText.Clean(draft.Path, 200)}: leaving now loses them.");
    }

    private string Before(CarQuestion question) => _car.Kept.GetValueOrDefault(question.Key, "");

    private string? Line(CarQuestion question)
    {
        shell.Out.Write($"{shell.Glyphs.Say(Shown(question))}: ");
        shell.Out.Flush();
        return answer()?.Trim();
    }

    // With its unit, and with what an empty answer means.
    private string Shown(CarQuestion question)
    {
        var (before, units) = (PeerText.Clean(Before(question), 40), shell.Glyphs.Units);
        var otherwise = before.Length > 0 ? $" (Enter: {before}, as answered)" : question.Otherwise is not { } o ? ""
            : $" (Enter: {(o.Assumed ? "a guess, " : "")}{question.OtherwiseText(units)})";
        return $"{question.Words}{(question.Unit(units) is { } unit ? $", {unit.Sign}" : "")}{otherwise}";
    }
}
